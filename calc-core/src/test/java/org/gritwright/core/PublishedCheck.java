package org.gritwright.core;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.function.DoubleSupplier;

/**
 * One number that somebody else stated, compared with ours.
 *
 * @param id stable name of the check
 * @param what what is computed, from which numbers
 * @param source where the number stands
 * @param stated the number as printed there
 * @param unit its unit as text, empty for none
 * @param tolerance how far ours may be from it
 * @param computed ours
 */
record PublishedCheck(
        String id,
        String what,
        Source source,
        String stated,
        String unit,
        Tolerance tolerance,
        DoubleSupplier computed) {
    private static final int DIGITS_SHOWN = 12;
    private static final int FEWEST_DIGITS_SHOWN = 7;

    /** Where a number comes from. What is derived or merely customary is never called published. */
    enum Source {
        MINNESOTA(
                "Minnesota handbook",
                "Minnesota Snow and Ice Control: Field Handbook for Snowplow Operators, 2nd revision (Minnesota LRRB /"
                        + " MnDOT, Manual 2005-01 REV, October 2012), insert \"Calibration Procedures for Spreaders\""),
        FLORIDA(
                "Florida UF00067504",
                "University of Florida extension, dry applicator calibration, digital item UF00067504, p. 3, Table 2"),
        GUM("GUM H.3", "JCGM 100:2008, Guide to the expression of uncertainty in measurement, example H.3"),
        STRD(
                "NIST StRD",
                "NIST Statistical Reference Datasets, univariate summary statistics and linear regression, certified"
                        + " values of the data set that is named"),
        NATRELLA(
                "NBS Handbook 91",
                "M. G. Natrella, Experimental Statistics, National Bureau of Standards Handbook 91, section 5-4.1"),
        QUAM(
                "QUAM A5",
                "EURACHEM/CITAC Guide, Quantifying Uncertainty in Analytical Measurement, example A5, cadmium from"
                        + " ceramic ware"),
        GRAYBILL(
                "Graybill and Iyer",
                "F. A. Graybill and H. K. Iyer, Regression Analysis: Concepts and Applications, 1994, p. 431"
                        + " and 433"),
        MASSART(
                "Massart and others",
                "D. L. Massart and others, Handbook of Chemometrics and Qualimetrics, part A, 1997, chapter 8,"
                        + " examples 1 and 7"),
        BUSING(
                "Busing",
                "F. M. T. A. Busing, Monotone regression: a simple and fast O(n) PAVA implementation, Journal of"
                        + " Statistical Software 102, 2022, an example of the paper and one computed by its program;"
                        + " second-hand, title and year from memory"),
        FRITSCH_CARLSON(
                "Fritsch and Carlson, RPN 14",
                "data RPN 14 of F. N. Fritsch and R. E. Carlson, Monotone piecewise cubic interpolation, SIAM Journal"
                        + " on Numerical Analysis 17, 1980, 238–246 (title and pages from memory); the values between them, by"
                        + " the variant of Fritsch and Butland, as the manual of the NAG Library prints them; second-hand"),
        FLUID_POWER(
                "fluid-power pages",
                "worked examples of general fluid-power pages: motor calculations of nottco.com, resources of"
                        + " ktnfluidpower.com"),
        GEAR_PUMPS(
                "gear-pump sheets",
                "\"Formula to calculate gear pump displacement\", a sheet for repair shops (as reproduced at paperzz.com,"
                        + " document 7823320); the same formula in \"Gear displacement calculation\", HydraulicSupermarket.com,"
                        + " 2000–2006"),
        FLOW_METERS(
                "flow-meter manuals",
                "instruction manual of the water flow meter Fusion, p. 16: K-factors of 1000 pulses a second at full"
                        + " flow; owner's manual of the flow monitor B2800, November 2013, p. 19: a calibration in five points"),
        NARASIMHAN(
                "Narasimhan and Jordache",
                "S. Narasimhan and C. Jordache, Data Reconciliation and Gross Error Detection, 2000, a network of six streams"
                        + " with a bypass; input second-hand, results from memory"),
        STEAM(
                "VDI 2048 steam circuit, computed",
                "VDI 2048, example of a steam circuit, input second-hand; results not seen in the standard but computed by"
                        + " another program"),
        GAMA("GNU Gama", "GNU Gama 1.5.09, sample output of a levelling network (vrmapper.com/gama)"),
        LONGLEY(
                "Longley, generalized least squares",
                "J. W. Longley's data of 1967, employed on GNP and POP with correlated errors, as R gives it; second-hand"),
        WEIGHING_DESIGNS(
                "NIST e-Handbook, weighing designs",
                "NIST/SEMATECH e-Handbook of Statistical Methods, 2.3.4.1.1 to 3, as reproduced"),
        GRUBBS("NIST e-Handbook, Grubbs", "NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1"),
        GUM_T("GUM Table G.2", "JCGM 100:2008, Guide to the expression of uncertainty in measurement, Table G.2"),
        GUM_H2("GUM H.2", "JCGM 100:2008, Guide to the expression of uncertainty in measurement, example H.2"),
        JCGM106(
                "JCGM 106, from memory",
                "JCGM 106:2012, The role of measurement uncertainty in conformity assessment, worked examples; from"
                        + " memory"),
        RP19(
                "NCSLI RP-19, draft",
                "NCSL International, Recommended Practice RP-19, Measurement decision risk, draft: false acceptance of"
                        + " a normal process by a test four times as certain; second-hand"),
        HANDBOOK_44(
                "NIST Handbook 44",
                "NIST Handbook 44, section 2.20, table 6, maintenance tolerances of class III; acceptance is half of"
                        + " it"),
        HANDBOOK_44_MEMORY(
                "NIST Handbook 44, from memory",
                "NIST Handbook 44, section 2.20, table 6, classes III L and IIII; from memory"),
        R76("OIML R 76", "OIML R 76-1, 3.5.1, as in the UK's SI 1995/1907, schedule 2; in service twice as much"),
        TABLES("tables, from memory", "the usual tables of quantiles, to the digits they print; from memory"),
        CATCH_CANS(
                "NC State catch cans",
                "G. Grabow (North Carolina State University), spreval 2022, vignette \"lateral-move systems\": rates in a row of"
                        + " catch cans across an irrigation lateral, and of two laterals together"),
        BULLETIN_817(
                "Ohio State Bulletin 817",
                "Ohio State University Extension, Bulletin 817, on rotary spreaders, Fig. 20"),
        IOWA_TARP(
                "Iowa State tarp",
                "J. Lorimor, Iowa State University Extension, fall 2001: calibrating solid manure spreaders by a tarp"),
        PEARSON(
                "Montana State Pearson squares",
                "Montana State University Extension, animal and range sciences, Pearson squares"),
        CROPWATCH(
                "CropWatch and Georgia",
                "University of Nebraska-Lincoln, CropWatch, 2016, on the flow of other liquids than water through sprayer nozzles,"
                        + " and P. Sumner, University of Georgia: conversion factors by pounds per gallon"),
        ROGERS_PITZER(
                "Rogers and Pitzer",
                "P. S. Z. Rogers and K. S. Pitzer, Volumetric properties of aqueous sodium chloride solutions, Journal of"
                        + " Physical and Chemical Reference Data 11, 1982, 15; specific volumes, second-hand, title from memory"),
        WNT(
                "WNT handbook",
                "Poradnik fizykochemiczny, WNT, Warszawa 1974: density of sodium chloride solutions at 20 °C; second-hand"),
        VDI("VDI Heat Atlas", "VDI Heat Atlas, secondary coolants; second-hand"),
        LANGE(
                "Lange's Handbook",
                "Lange's Handbook of Chemistry, 15th edition, Table 5.13, specific gravity of brines; second-hand"),
        CHEMISTRY_HANDBOOK(
                "a chemistry handbook",
                "freezing points of sodium chloride solutions in a chemistry handbook; second-hand"),
        TANAKA(
                "Tanaka and others",
                "M. Tanaka and others, Recommended table for the density of water between 0 °C and 40 °C based on recent"
                        + " experimental reports, Metrologia 38, 2001, as programs for it print; title from memory"),
        SALT_INSTITUTE(
                "Salt Institute", "Salt Institute, chemical and physical properties of salt: solubility at 60 °F"),
        MONTGOMERY(
                "Montgomery 9.1 and 9.2",
                "D. C. Montgomery, Introduction to Statistical Quality Control, Tables 9.1 and 9.2; second-hand, what"
                        + " is said of the change and of the EWMA from memory"),
        CROWDER(
                "Crowder 1987",
                "S. V. Crowder, A simple method for studying run-length distributions of exponentially weighted moving"
                        + " average charts, Technometrics 29, 1987, 401, Table 1; second-hand, title from memory; its 3.95 at"
                        + " λ 0.5, L 2, shift 1.25 is a misprint of 3.59"),
        CROWDER_1989(
                "Crowder 1989",
                "S. V. Crowder, Design of exponentially weighted moving average schemes, Journal of Quality Technology 21,"
                        + " 1989; second-hand, title from memory"),
        LUCAS_SACCUCCI(
                "Lucas and Saccucci",
                "J. M. Lucas and M. S. Saccucci, Exponentially weighted moving average control schemes, Technometrics 32,"
                        + " 1990, 1, Table 3; second-hand, title from memory"),
        STEINER(
                "Steiner",
                "S. H. Steiner, 1999, Table 2, EWMA charts with fixed limits; second-hand; its 135.0 at shift 0.25 is left"
                        + " out (133.59)"),
        QC_MANUAL(
                "a quality-control manual",
                "manual of a statistics program's quality-control part, 1999; second-hand; its CUSUM numbers are right to"
                        + " seven or eight digits"),
        LUCAS_CROSIER(
                "Lucas and Crosier",
                "J. M. Lucas and R. B. Crosier, Fast initial response for CUSUM quality-control schemes, Technometrics 24,"
                        + " 1982, 199, Table 1; second-hand, title from memory"),
        BROOK_EVANS(
                "Brook and Evans",
                "D. Brook and D. A. Evans, An approach to the probability distribution of CUSUM run length, Biometrika 59,"
                        + " 1972, section 4.3; second-hand, title from memory"),
        VANCE(
                "Vance",
                "L. C. Vance, Journal of Quality Technology 18, 1986, and A. L. Goel and S. M. Wu, Technometrics 13, 1971,"
                        + " Table 1; second-hand"),
        WALDMANN(
                "Waldmann",
                "K.-H. Waldmann, Bounds for the distribution of the run length of one-sided and two-sided CUSUM quality"
                        + " control schemes, Technometrics 28, 1986, Tables 1, 3, 5; second-hand, title from memory"),
        GAN_1991(
                "Gan 1991",
                "F. F. Gan, EWMA control chart under linear drift, 1991, Table 1; second-hand, title from memory"),
        GAN_1992(
                "Gan 1992",
                "F. F. Gan, CUSUM control charts under linear drift, 1992, Table 1; second-hand, title from memory; its 76.3"
                        + " at a drift of 0.005 is left out (77.17)"),
        GAN_1993("Gan 1993", "F. F. Gan, EWMA charts with an in-control median run length of 500, 1993; second-hand"),
        CHAMP_WOODALL(
                "Champ and Woodall",
                "C. W. Champ and W. H. Woodall, Exact results for Shewhart control charts with supplementary runs rules,"
                        + " Technometrics 29, 1987, 393, Table 1; second-hand"),
        CROWDER_INDIVIDUALS(
                "Crowder 1987b",
                "S. V. Crowder, Computation of ARL for combined individual measurement and moving range charts, Journal of"
                        + " Quality Technology 19, 1987, Listing 1; second-hand, title from memory"),
        RIGDON(
                "Rigdon and others",
                "S. E. Rigdon and others, 1994, on limits of combined individuals and moving-range charts; second-hand"),
        UNITS(
                "derived: units",
                "computed from the exact definitions of the units (NIST Special Publication 811, 2008, Appendix B; NIST"
                        + " Handbook 44, Appendix C)"),
        GEOMETRY(
                "derived: geometry",
                "computed from the textbook form of a screw, of a chain on a sprocket, of a belt on a pulley, of"
                        + " pockets, of a circle's segment and of meshing gears"),
        GRAIN_FLOW(
                "derived: grain flow",
                "computed from the law of dry grains through an opening; the law and its constants from memory"),
        BUDGETS(
                "derived: budgets",
                "computed by hand by the method of NIST Technical Note 1297: a demonstration of the sums, not of which"
                        + " uncertainties belong into a budget"),
        ARITHMETIC("derived: arithmetic", "computed by hand from the definition"),
        CUSTOM("common practice, no source", "numbers as the trade prints them, rounded");

        private final String name;
        private final String citation;

        Source(String name, String citation) {
            this.name = name;
            this.citation = citation;
        }

        String shortName() {
            return name;
        }

        String citation() {
            return citation;
        }
    }

    /** How far a computed number may be from the stated one. */
    enum Tolerance {
        /** A part in 10¹²: the stated number is exact. */
        EXACT {
            @Override
            double of(BigDecimal stated) {
                return Math.abs(stated.doubleValue()) * 1e-12;
            }
        },
        /** Half a unit of the last digit printed. */
        LAST_DIGIT {
            @Override
            double of(BigDecimal stated) {
                // A little more for the rounding of the comparison itself.
                return stated.ulp().doubleValue() * 0.5000001;
            }
        },
        /** The last digit printed was cut off, or rounded on the way by hand: one and a half units of it. */
        HAND_ROUNDED {
            @Override
            double of(BigDecimal stated) {
                return stated.ulp().doubleValue() * 1.5;
            }
        },
        /** The source's own integration is coarser than what it prints: 0.2 %. */
        COARSE_INTEGRATION {
            @Override
            double of(BigDecimal stated) {
                return Math.abs(stated.doubleValue()) * 0.002;
            }
        },
        /** The source rounded the limits of its charts to a few digits: 0.8 %. */
        ROUNDED_LIMITS {
            @Override
            double of(BigDecimal stated) {
                return Math.abs(stated.doubleValue()) * 0.008;
            }
        },
        /** The last two or three digits are wrong: a part in 10⁷. */
        WRONG_LAST_DIGITS {
            @Override
            double of(BigDecimal stated) {
                return Math.abs(stated.doubleValue()) * 1e-7;
            }
        },
        /** The source rounded a constant on its way: 1.6 %. */
        ROUNDED_CONSTANT {
            @Override
            double of(BigDecimal stated) {
                return Math.abs(stated.doubleValue()) * 0.016;
            }
        },
        /** Tables of the density of sodium chloride solutions differ: 0.1 %. */
        BRINE_TABLES {
            @Override
            double of(BigDecimal stated) {
                return stated.doubleValue() * 0.001;
            }
        },
        /** Tables of the density of other solutions differ: 0.3 %. */
        OTHER_BRINE_TABLES {
            @Override
            double of(BigDecimal stated) {
                return stated.doubleValue() * 0.003;
            }
        },
        /** Tables of freezing points differ: 3 %. */
        FREEZING_TABLES {
            @Override
            double of(BigDecimal stated) {
                return Math.abs(stated.doubleValue()) * 0.03;
            }
        },
        /** Charts print three digits, cut off: 0.26 %. */
        CUT_OFF {
            @Override
            double of(BigDecimal stated) {
                return Math.abs(stated.doubleValue()) * 0.0026;
            }
        };

        abstract double of(BigDecimal stated);
    }

    double statedValue() {
        return new BigDecimal(stated).doubleValue();
    }

    double allowed() {
        return tolerance.of(new BigDecimal(stated));
    }

    /** The class and the name of the test that compares ours with the stated number. */
    String testedIn() {
        return PublishedValuesTest.class.getSimpleName() + ", " + id;
    }

    String statedText() {
        return stated + unitText();
    }

    String computedText() {
        return shown() + unitText();
    }

    /** Whether ours is equal to the last digit printed. */
    boolean isAsPrinted() {
        BigDecimal printed = new BigDecimal(stated);
        boolean printedAsRounded = tolerance == Tolerance.ROUNDED_CONSTANT || tolerance == Tolerance.CUT_OFF;
        return !printedAsRounded
                && new BigDecimal(computed.getAsDouble())
                                .setScale(printed.scale(), RoundingMode.HALF_EVEN)
                                .compareTo(printed)
                        == 0;
    }

    /** In percent of the stated number. */
    double deviation() {
        return (computed.getAsDouble() / statedValue() - 1) * 100;
    }

    /** A dash for equal to the last digit printed. */
    String deviationText() {
        return isAsPrinted() ? "–" : text(deviation());
    }

    static String text(double percent) {
        return String.format(Locale.ROOT, Math.abs(percent) < 0.005 ? "%+.0e %%" : "%+.2f %%", percent);
    }

    private String unitText() {
        return unit.isEmpty() ? "" : " " + unit;
    }

    private String shown() {
        int digits = Math.max(FEWEST_DIGITS_SHOWN, Math.min(DIGITS_SHOWN, new BigDecimal(stated).precision()));
        BigDecimal rounded = new BigDecimal(computed.getAsDouble()).round(new MathContext(digits));
        return rounded.stripTrailingZeros().toPlainString();
    }
}
