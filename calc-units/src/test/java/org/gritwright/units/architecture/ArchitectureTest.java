package org.gritwright.units.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.lang.reflect.Field;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** The rules hold for every class of the library. */
class ArchitectureTest {
    static final List<ArchRule> RULES = Rules.ALL;

    private static final JavaClasses LIBRARY = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.gritwright.units");

    @Test
    void theWholeLibraryIsLookedAt() {
        assertThat(LIBRARY.contain(SpreadingUnits.class)).isTrue();
        assertThat(LIBRARY).hasSizeGreaterThan(40);
        assertThat(LIBRARY.stream().map(type -> type.getPackageName()).distinct())
                .containsExactlyInAnyOrder(
                        "org.gritwright.units",
                        "org.gritwright.units.check",
                        "org.gritwright.units.quantity",
                        "org.gritwright.units.rate",
                        "org.gritwright.units.spi");
    }

    @ParameterizedTest
    @FieldSource("RULES")
    void theRuleHolds(ArchRule rule) {
        rule.check(LIBRARY);
    }

    @Test
    void staticCollectionsCannotBeChanged() throws Exception {
        List<JavaField> collections = LIBRARY.stream()
                .flatMap(type -> type.getFields().stream())
                .filter(field -> field.getModifiers().contains(JavaModifier.STATIC))
                .filter(field -> field.getRawType().isAssignableTo(Collection.class)
                        || field.getRawType().isAssignableTo(Map.class))
                .toList();
        assertThat(collections).isNotEmpty();
        for (JavaField collection : collections) {
            assertThat(isUnmodifiable(valueOf(collection)))
                    .as(collection.getFullName())
                    .isTrue();
        }
    }

    private static Object valueOf(JavaField collection) throws IllegalAccessException {
        Field field = collection.reflect();
        field.setAccessible(true);
        return field.get(null);
    }

    static boolean isUnmodifiable(Object collection) {
        String type = collection.getClass().getName();
        return type.startsWith("java.util.ImmutableCollections$")
                || type.startsWith("java.util.Collections$Unmodifiable");
    }
}
