package org.gritwright.examples.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;

/** A Java virtual machine of its own, or a tool of the JDK. */
record Run(int exit, String printed) {

    /** With the JDK that runs the tests. */
    static Run java(String... arguments) throws Exception {
        return java(Path.of(System.getProperty("java.home")), arguments);
    }

    static Run java(Path home, String... arguments) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(home.resolve("bin").resolve("java").toString());
        // As an embedder does who knows what the start of a small program costs.
        command.add("-XX:TieredStopAtLevel=1");
        command.add("-Dfile.encoding=UTF-8");
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Run(process.waitFor(), printed.strip());
    }

    static void tool(String name, String... arguments) {
        assertThat(ToolProvider.findFirst(name).orElseThrow().run(System.out, System.err, arguments))
                .as(name)
                .isZero();
    }

    /** Compiles with the paths or the libraries that the options name. */
    static Path compile(Path classes, List<Path> sources, String... options) {
        tool(
                "javac",
                Stream.of(
                                Stream.of("-encoding", "UTF-8", "-d", classes.toString()),
                                Stream.of(options),
                                sources.stream().map(Path::toString))
                        .flatMap(part -> part)
                        .toArray(String[]::new));
        return classes;
    }

    void assertPrinted(String wanted) {
        assertThat(printed).isEqualTo(wanted);
        assertThat(exit).isZero();
    }
}
