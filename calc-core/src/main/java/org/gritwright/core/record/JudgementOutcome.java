package org.gritwright.core.record;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Judgement;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * What a catch's error and its uncertainty said about the tolerance, as it stands in a record.
 *
 * @param catches how many catches were judged together
 * @param error their error
 * @param verdict the verdict
 * @param risk the risk of the guarded rule; none for simple acceptance
 * @param guardBand the guard band
 * @param probabilityBelow how likely the true error is below the tolerance
 * @param probabilityWithin how likely it is within
 * @param probabilityAbove how likely it is above
 * @param advice what to do
 * @param furtherCatches how many more catches could tell; none where nothing more need be caught or none could
 * @param furtherAmount how much that is: a mass, or a volume of a liquid
 * @param budget where the uncertainty of the error comes from
 */
public record JudgementOutcome(
        Quantity<Dimensionless> catches,
        Quantity<Dimensionless> error,
        Verdict verdict,
        Optional<Quantity<Dimensionless>> risk,
        Quantity<Dimensionless> guardBand,
        Quantity<Dimensionless> probabilityBelow,
        Quantity<Dimensionless> probabilityWithin,
        Quantity<Dimensionless> probabilityAbove,
        Advice advice,
        Optional<Quantity<Dimensionless>> furtherCatches,
        Optional<Quantity<?>> furtherAmount,
        BudgetOutcome budget) {
    static JudgementOutcome of(Judgement judgement, int catches) {
        return new JudgementOutcome(
                Amounts.of(catches, SpreadingUnits.ONE),
                judgement.budget().result().value(),
                judgement.verdict(),
                judgement.rule().risk(),
                judgement.guardBand(),
                percent(judgement.conformity().below()),
                percent(judgement.conformity().within()),
                percent(judgement.conformity().above()),
                judgement.advice(),
                judgement.further().map(f -> Amounts.of(f.catches(), SpreadingUnits.ONE)),
                judgement.further().map(Judgement.FurtherCatches::amount),
                BudgetOutcome.of(judgement.budget()));
    }

    private static Quantity<Dimensionless> percent(double probability) {
        return Amounts.ofSi(probability, SpreadingUnits.PERCENT);
    }
}
