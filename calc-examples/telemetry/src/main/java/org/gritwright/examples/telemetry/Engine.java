package org.gritwright.examples.telemetry;

import org.apache.hadoop.conf.Configuration;
import org.apache.spark.SparkConf;
import org.apache.spark.deploy.SparkHadoopUtil;
import org.apache.spark.sql.SparkSession;

/** Spark with the settings that the tables rely on. */
final class Engine {
    private Engine() {}

    /** For whatever file system a cluster has, without starting it. */
    static Configuration configuration() {
        return SparkHadoopUtil.get().newConfiguration(new SparkConf());
    }

    /**
     * Within {@code spark-submit} that's the cluster; otherwise this machine.
     *
     * @param cores as in {@code local[2]}; * for all
     */
    static SparkSession session(String cores) {
        SparkSession.Builder builder = SparkSession.builder().appName("season");
        if (System.getProperty("spark.master") == null) {
            // One machine: nothing to look at from outside, nothing to be reached by others.
            builder.master("local[" + cores + "]")
                    .config("spark.ui.enabled", false)
                    .config("spark.driver.host", "localhost")
                    .config("spark.driver.bindAddress", "127.0.0.1");
        }
        SparkSession spark = builder.getOrCreate().newSession();
        spark.conf().set("spark.sql.session.timeZone", "UTC");
        spark.conf().set("spark.sql.parquet.outputTimestampType", "TIMESTAMP_MICROS");
        return spark;
    }
}
