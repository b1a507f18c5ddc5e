package org.gritwright.core.statistics;

import java.util.ArrayList;
import java.util.List;

/**
 * Neighboring rows that share one value, because their means fall where they should rise.
 *
 * @param weight the sum of the rows' weights
 * @param mean their weighted mean
 * @param rows how many
 */
record PooledBlock(double weight, double mean, int rows) {

    /** Adjacent rows that fall are pooled into a block at their weighted mean until nothing falls. */
    static List<PooledBlock> pool(Observations.Group[] groups) {
        List<PooledBlock> blocks = new ArrayList<>();
        for (Observations.Group group : groups) {
            PooledBlock block = new PooledBlock(group.weight(), group.mean(), 1);
            while (!blocks.isEmpty() && blocks.get(blocks.size() - 1).mean() > block.mean()) {
                PooledBlock before = blocks.remove(blocks.size() - 1);
                double weight = before.weight() + block.weight();
                double mean = (before.weight() * before.mean() + block.weight() * block.mean()) / weight;
                block = new PooledBlock(weight, mean, before.rows() + block.rows());
            }
            blocks.add(block);
        }
        return blocks;
    }
}
