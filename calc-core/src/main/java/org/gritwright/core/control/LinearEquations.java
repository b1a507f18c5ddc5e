package org.gritwright.core.control;

/** A system of linear equations, by elimination with partial pivoting. */
final class LinearEquations {
    private LinearEquations() {}

    /**
     * Solves matrix·x = right.
     *
     * @param matrix square; used up
     * @param right as long; used up, becomes x
     * @return x; without a meaning, and perhaps not finite, if the matrix has no inverse
     */
    static double[] solve(double[][] matrix, double[] right) {
        int n = right.length;
        for (int column = 0; column < n; column++) {
            int pivot = column;
            for (int row = column + 1; row < n; row++) {
                if (Math.abs(matrix[row][column]) > Math.abs(matrix[pivot][column])) {
                    pivot = row;
                }
            }
            double[] line = matrix[pivot];
            matrix[pivot] = matrix[column];
            matrix[column] = line;
            double number = right[pivot];
            right[pivot] = right[column];
            right[column] = number;
            for (int row = column + 1; row < n; row++) {
                double factor = matrix[row][column] / line[column];
                double[] other = matrix[row];
                for (int i = column + 1; i < n; i++) {
                    other[i] -= factor * line[i];
                }
                right[row] -= factor * number;
            }
        }
        for (int row = n - 1; row >= 0; row--) {
            double sum = right[row];
            for (int i = row + 1; i < n; i++) {
                sum -= matrix[row][i] * right[i];
            }
            right[row] = sum / matrix[row][row];
        }
        return right;
    }
}
