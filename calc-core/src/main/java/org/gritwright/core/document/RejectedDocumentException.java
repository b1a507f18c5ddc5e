package org.gritwright.core.document;

import java.util.List;
import java.util.stream.Collectors;

/** A document that can't be read, with everything that is wrong with it, not just the first thing. */
public final class RejectedDocumentException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Problem> problems;

    /**
     * Makes the exception; its message has one line for each problem.
     *
     * @param problems one problem or more
     */
    public RejectedDocumentException(List<Problem> problems) {
        super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
        this.problems = List.copyOf(problems);
    }

    /**
     * What is wrong.
     *
     * @return one problem or more, in the order of the document
     */
    public List<Problem> problems() {
        return problems;
    }
}
