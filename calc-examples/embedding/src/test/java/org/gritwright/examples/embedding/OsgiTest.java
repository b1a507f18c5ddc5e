package org.gritwright.examples.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.Bundle;
import org.osgi.framework.Constants;
import org.osgi.framework.launch.Framework;
import org.osgi.framework.launch.FrameworkFactory;

/** The page's program as a bundle beside the libraries'. */
class OsgiTest {
    private static final String PROGRAM = "yard/Trucks.class";

    @TempDir
    Path folder;

    @Test
    void aBundleExportsWhatItsModuleExports() throws Exception {
        for (Path jar : Jars.ours()) {
            ModuleDescriptor module =
                    ModuleFinder.of(jar).findAll().iterator().next().descriptor();
            try (JarFile file = new JarFile(jar.toFile())) {
                Attributes headers = file.getManifest().getMainAttributes();
                assertThat(headers.getValue(Constants.BUNDLE_SYMBOLICNAME)).isEqualTo(module.name());
                assertThat(packages(headers.getValue(Constants.EXPORT_PACKAGE)))
                        .containsExactlyInAnyOrderElementsOf(module.exports().stream()
                                .map(ModuleDescriptor.Exports::source)
                                .toList());
            }
        }
    }

    /** The names in such a header: what stands before the first semicolon, with commas in quotes left alone. */
    private static List<String> packages(String header) {
        return Arrays.stream(header.replaceAll("\"[^\"]*\"", "").split(",", -1))
                .map(clause -> clause.split(";", -1)[0])
                .toList();
    }

    @Test
    void aBundleReadsADocument() throws Exception {
        String document = Files.writeString(folder.resolve("day.json"), Text.block(Text.DOCUMENTS, "document"))
                .toString();
        Framework framework = ServiceLoader.load(FrameworkFactory.class)
                .findFirst()
                .orElseThrow()
                .newFramework(Map.of(
                        Constants.FRAMEWORK_STORAGE, folder.resolve("store").toString()));
        framework.start();
        try {
            List<Bundle> bundles = new ArrayList<>();
            List<Path> jars = new ArrayList<>(Jars.all());
            jars.add(bundleOfTheProgram());
            for (Path jar : jars) {
                bundles.add(
                        framework.getBundleContext().installBundle(jar.toUri().toString()));
            }
            for (Bundle bundle : bundles) {
                bundle.start();
            }
            assertThat(bundles).allMatch(bundle -> bundle.getState() == Bundle.ACTIVE);
            Class<?> trucks = bundles.get(bundles.size() - 1).loadClass("yard.Trucks");

            assertThat(printed(trucks, document)).isEqualTo(Text.block(Text.EMBEDDING, "example output"));
        } finally {
            framework.stop();
            framework.waitForStop(10_000);
        }
    }

    private Path bundleOfTheProgram() throws Exception {
        Path source = Files.writeString(folder.resolve("Trucks.java"), Text.block(Text.EMBEDDING, "example"));
        Path classes = Run.compile(folder.resolve("classes"), List.of(source), "-cp", Jars.path(Jars.all()));
        Manifest manifest = new Manifest();
        Attributes headers = manifest.getMainAttributes();
        headers.put(Attributes.Name.MANIFEST_VERSION, "1.0");
        headers.putValue(Constants.BUNDLE_MANIFESTVERSION, "2");
        headers.putValue(Constants.BUNDLE_SYMBOLICNAME, "yard");
        headers.putValue(
                Constants.IMPORT_PACKAGE,
                "org.gritwright.core.fleet.assessment,org.gritwright.core.fleet.day,org.gritwright.core.metering,"
                        + "org.gritwright.core.record,org.gritwright.core.spi");
        Path jar = folder.resolve("yard.jar");
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar), manifest)) {
            out.putNextEntry(new ZipEntry(PROGRAM));
            Files.copy(classes.resolve(PROGRAM), out);
        }
        return jar;
    }

    private static String printed(Class<?> program, String argument) throws Exception {
        Method main = program.getDeclaredMethod("main", String[].class);
        main.setAccessible(true);
        PrintStream before = System.out;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        System.setOut(new PrintStream(bytes, true, StandardCharsets.UTF_8));
        try {
            main.invoke(null, (Object) new String[] {argument});
        } finally {
            System.setOut(before);
        }
        return bytes.toString(StandardCharsets.UTF_8).strip();
    }
}
