package org.gritwright.core.document;

import java.util.List;
import java.util.stream.Collectors;

/** A document that can't be read, with everything that is wrong with it, not just the first thing, within limits. */
public final class RejectedDocumentException extends Exception {
    private static final long serialVersionUID = 2L;

    private final transient List<Problem> problems;
    private final int more;

    /**
     * Makes the exception; its message has one line for each problem.
     *
     * @param problems one problem or more
     */
    public RejectedDocumentException(List<Problem> problems) {
        this(problems, 0);
    }

    /**
     * Makes the exception; its message has one line for each problem, and one for those that aren't listed.
     *
     * @param problems one problem or more
     * @param more how many were found beside them
     */
    public RejectedDocumentException(List<Problem> problems, int more) {
        super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n"))
                + (more > 0 ? "\nand " + more + " more" : ""));
        this.problems = List.copyOf(problems);
        this.more = more;
    }

    /**
     * What is wrong.
     *
     * @return one problem or more, in the order of the document
     */
    public List<Problem> problems() {
        return problems;
    }

    /**
     * How many problems were found beside those that are listed.
     *
     * @return 0 unless there were more than the limits allow
     */
    public int more() {
        return more;
    }
}
