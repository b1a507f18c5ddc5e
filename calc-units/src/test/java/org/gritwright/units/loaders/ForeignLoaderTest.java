package org.gritwright.units.loaders;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The library's first use may be on any thread. The reference implementation looks up its number system with the context
 * class loader of whichever thread comes first; where that loader didn't see it, the look-up failed within static
 * initialisers, and units were lost for the life of the virtual machine.
 */
class ForeignLoaderTest {
    private static final String USED =
            "250 lb/mi; 70.46230793416449; lb to kg: × 45359237/100000000; 4.72155422; 263.15; 263.15";
    private static final String SEEN = "tech.units.indriya.function.DefaultNumberSystem; its loader: own;"
            + " current: Default; available: [Default, Spreading]; 10.0; precision: precision=34 roundingMode=HALF_EVEN";

    private Jvm jvm;

    @BeforeEach
    void freshFolder(@TempDir Path folder) {
        jvm = new Jvm(folder);
    }

    private static String use(String thread, String context) {
        return FirstUse.class.getName() + "@" + thread + "@" + context;
    }

    private static String view(String context) {
        return EmbedderView.class.getName() + "@embedder@" + context;
    }

    private static String settings(String context) {
        return EmbedderSettings.class.getName() + "@embedder@" + context;
    }

    @Test
    void anEmbedderSeesThisWithoutUs() throws Exception {
        assertThat(jvm.onClassPath(view("home"))).containsExactly(SEEN);
        assertThat(jvm.onModulePath(view("home"))).containsExactly(SEEN);
        assertThat(jvm.nested(view("home"))).containsExactly(SEEN);
        assertThat(jvm.inLayer(view("home"))).containsExactly(SEEN);
    }

    @ParameterizedTest
    @ValueSource(strings = {"home", "platform", "none", "stopped", "neighbor"})
    void worksOnTheClassPathWhateverTheContext(String context) throws Exception {
        assertThat(jvm.onClassPath(use("first", context), use("second", "home"), use("third", context), view("home")))
                .containsExactly(USED, USED, USED, SEEN);
    }

    @ParameterizedTest
    @ValueSource(strings = {"home", "platform", "none", "neighbor"})
    void worksOnTheModulePathWhateverTheContext(String context) throws Exception {
        assertThat(jvm.onModulePath(use("first", context), use("second", "home"), use("third", context), view("home")))
                .containsExactly(USED, USED, USED, SEEN);
    }

    @ParameterizedTest
    @ValueSource(strings = {"home", "program", "none", "neighbor"})
    void worksInALoaderBelowTheContext(String context) throws Exception {
        assertThat(jvm.nested(use("first", context), use("second", "home"), use("third", context), view("home")))
                .containsExactly(USED, USED, USED, SEEN);
    }

    @Test
    void worksInAModuleLayerThatTheContextDoesNotSee() throws Exception {
        assertThat(jvm.inLayer(use("first", "program"), use("second", "home"), use("third", "none"), view("home")))
                .containsExactly(USED, USED, USED, SEEN);
    }

    @Test
    void worksOnAThreadOfTheCommonPoolInANestedLoader() throws Exception {
        assertThat(jvm.nested(
                        use("common-pool", "program"),
                        use("second", "home"),
                        use("common-pool", "program"),
                        view("home")))
                .containsExactly(USED, USED, USED, SEEN);
    }

    @Test
    void leavesTheEmbedderItsOwnNumberSystemAndServiceProvider() throws Exception {
        assertThat(jvm.nested(settings("program"))).containsExactly(USED + "; settings kept");
        assertThat(jvm.onClassPath(settings("home"))).containsExactly(USED + "; settings kept");
    }
}
