package org.gritwright.examples.fleetday;

import java.lang.module.ModuleFinder;
import java.net.URISyntaxException;
import java.nio.file.Path;
import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote into the module's descriptor, which is there on the class path too. */
final class ProgramVersion implements IVersionProvider {
    private static final String MODULE = "org.gritwright.examples.fleetday";

    private ProgramVersion() {}

    @Override
    public String[] getVersion() throws URISyntaxException {
        Path place = Path.of(ProgramVersion.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
        String version = ModuleFinder.of(place)
                .find(MODULE)
                .flatMap(module -> module.descriptor().rawVersion())
                .orElse("of unknown version");
        return new String[] {"fleet-day " + version};
    }
}
