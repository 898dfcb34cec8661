package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import org.quietline.report.Block.Column;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;
import org.quietline.report.Block.Row;
import org.quietline.report.Block.Table;

/** How to read and recompute a review, and what it must not be used for. */
final class HowToRead {
  private HowToRead() {}

  static List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("How was it computed?"));
    blocks.add(table(0.19, methods()));
    blocks.add(new Heading("What do the words mean?"));
    blocks.add(table(0.19, words()));
    blocks.add(new Heading("What must it not be used for?"));
    cautions().forEach(c -> blocks.add(Paragraph.small(c).in(Colour.INK)));
    return blocks;
  }

  private static Table table(double share, List<Row> rows) {
    return new Table(List.of(Column.answers("", share), Column.words("", 1 - share)), rows, false);
  }

  private static List<Row> methods() {
    return List.of(
        Row.of(
            "repeatability",
            "Deviation s = √(Σd² / 2m) of m pairs with differences d; limit 1.96·√2·s; interval from"
                + " χ². ISO 5725-6."),
        Row.of(
            "pairs, people",
            "Binomial chance of so many pairs beyond the limit at 5 % each; F test of the variances"
                + " of a person's pairs against the others', times the number of people."),
        Row.of(
            "pair and chart",
            "The mean of a pair is charted as one result, with limits from one result to the next:"
                + " both readings share the error of the calibration and of the session, which the"
                + " range within the pair cannot show."),
        Row.of(
            "control limits",
            "Mean ± 3·MR/1.12838, MR the mean of the moving ranges of two; warning limits at"
                + " two thirds of that. Or as the settings say: mean ± 3 sample deviations,"
                + " prediction or tolerance limits, or prediction for a result under a new calibration"
                + " with the variance between calibrations by restricted likelihood. Each result keeps"
                + " the limits that judged it. ISO 7870-2, ISO 4259-4."),
        Row.of(
            "provisional limits",
            "Under 15 results: mean ± t·s·√(1 + 1/n), t of n − 1 degrees of freedom at 0.99865 for"
                + " action and 0.975 for warning limits. Limits hold the results they are made from,"
                + " so results 6 to 14 are judged by this form from the results before them. The first"
                + " five: a third of the allowance, or another material's deviation, counts as four"
                + " degrees of freedom, an assigned value as one result, and the limits are those a"
                + " Student's t predicts from that and the results so far."),
        Row.of(
            "do limits fit",
            "Von Neumann's ratio Σ(x − x before)²/Σ(x − mean)², near 2 for independent results, with"
                + " its exact chance; F test between the calibrations of the baseline, and the bounds"
                + " it gives for their deviation over that within (Wald)."),
        Row.of(
            "revision",
            "F test of the deviations, then t test of the means, each at 5 %: nothing differs, pool;"
                + " smaller scatter, replace; larger scatter or a moved mean, keep and look for the"
                + " cause. ASTM D6299 practice (from memory)."),
        Row.of(
            "weighted mean",
            "z = λx + (1 − λ)·(z before), starting at the centre at each calibration; limits centre"
                + " ± w·√(λ/(2 − λ)·(1 − (1 − λ)^2t)), w from centre to action limit, t results"
                + " since the start. ISO 7870-6."),
        Row.of(
            "readings apart",
            "Limit √2·t·s for a control's pair, s from the m pairs of the baseline, t of m degrees"
                + " of freedom at 0.99865: a pair like those breaks it with a chance of 0.27 %."),
        Row.of(
            "by chance",
            "For each result of the period the chance that one in control breaks each stop rule, on"
                + " average over baselines of that size: 2·P(T > c·K/√(1 + 1/n)) for single results"
                + " with limits K deviations out, the like for the weighted mean t results after its"
                + " start, 0.27 % for a pair; summed. c = 1 for the sample deviation, and makes a mean"
                + " moving range right on average. For independent results; signals, not stories."),
        Row.of(
            "how soon",
            "From 2000 simulated benches with a baseline of that size, as many results between starts"
                + " as this stream has, and a shift that begins anywhere between two starts."),
        Row.of(
            "story, hint",
            "Onset: where a step is likeliest, (n − k)·mean² largest. Patterns are compared by"
                + " Schwarz's criterion on all control results, beside a mean for each stream; a share"
                + " is exp(−Δ/2) over the sum. A pattern is what the results look like, not why."),
        Row.of(
            "in doubt",
            "Product and retest results since the last control that broke no rule, each less the likely"
                + " error of the leading pattern, with its 95 % interval."),
        Row.of(
            "step at the limit",
            "What a response that read the limit through the calibration before reads through this one;"
                + " its limit √2·t·s with s the scatter of the heights of the lines before the two, at"
                + " 99.73 %."),
        Row.of(
            "blank, related",
            "Each is held against what those before it predict by Student's t at 99.73 %; blanks also"
                + " by their weighted mean, both together at 0.27 %."),
        Row.of(
            "bias",
            "Baseline mean less assigned value; standard uncertainty √(s²/n + u²), u that of the"
                + " assigned value."),
        Row.of(
            "drift",
            "Deviations of all windows as y = μ + a + (β + b)·t + e, where heights a and slopes b of"
                + " windows differ by chance; their spreads over that of e, that of b times half the"
                + " validity, are averaged over with priors 1/(1 + ρ²) and arctan ρ/(1 + ρ²). At each pair of ratios the"
                + " height errs as v·T + u·Z: T Student's t of n less the coefficients, u the"
                + " reference's standard uncertainty, Z normal. One window alone is the least-squares"
                + " line. The last safe day is the latest to which the chance of being beyond the"
                + " allowance is at most 5 %, unless set otherwise. Gelman (2006); Box and Tiao (1973)."),
        Row.of(
            "where scatter comes from",
            "All readings of a control as mean + calibration + result + reading, each normal with its"
                + " own deviation, by restricted maximum likelihood; intervals by generalised pivots."
                + " ISO 5725-3; Searle, Casella and McCulloch (1992)."),
        Row.of(
            "uncertainty",
            "Root of the sum of squares of the parts named: scatter of a result, what product readings"
                + " scatter more, and the bias: the mean less the assigned value, its standard error"
                + " and that value's uncertainty, or the root mean square of differences from outside"
                + " and what outside laboratories state, whichever is more. Degrees of freedom by Welch"
                + " and Satterthwaite. Nordtest TR 537; JCGM 100."),
        Row.of(
            "conforms, guard band",
            "Chance P(T < (limit − value)/u), T Student's t of those degrees of freedom; guard band t·u"
                + " at the chance asked for. Calibrations behind a value are counted once for all its"
                + " results. JCGM 106:2012."),
        Row.of(
            "others find the same",
            "Mean difference ± t·s/√n; alike by two one-sided tests at 5 % (Schuirmann 1987). Limits"
                + " mean ± 1.96·s with exact intervals (Bland and Altman). E-n = difference/√(U² + U²),"
                + " zeta twice that; z by the deviation that a round states, z′ where the assigned"
                + " value's uncertainty is above 0.3 of it. ISO 13528."),
        Row.of(
            "costs",
            "Chances of releasing a bad batch and of holding a good one, true values normal as batches"
                + " show them less the scatter of a result, times their costs. JCGM 106:2012, 9.5."),
        Row.of(
            "performance index",
            "Ppk = distance from the mean to the nearer limit / 3s; its one-sided 95 % lower bound and"
                + " the interval of the share beyond, Φ(−3·index), from the noncentral t distribution."
                + " Of logarithms where the Anderson–Darling test speaks against a normal shape at 1 %"
                + " and not against theirs. Not given where neighbours are too alike (von Neumann, 1 %)"
                + " or results stop at the limit (a cut 20 times as likely). ISO 22514-2."),
        Row.of(
            "over days",
            "Deviation of all control results that count about the mean of their stream, pooled;"
                + " its square over that of the batches is the share of measurement."),
        Row.of(
            "bounds",
            "A reading below or above a bound is no number: its result is left out of means, limits,"
                + " pairs and slopes and counted there, and it is a signal or beyond a limit only"
                + " where the bound itself is. In the index it counts as a bound by its likelihood."),
        Row.of(
            "slips",
            "On logarithms, against the other reading, retests, the related method, the control's or"
                + " its kind's other results: asked where a value is beyond t at four normal"
                + " deviations (median, scaled MAD) and a plain slip would bring it within three."),
        Row.of(
            "records",
            "Dates, lots, calibrations, running numbers, people and parts are held against each"
                + " other. A check asks and corrects nothing; one that is switched off is named."),
        Row.of(
            "settings, data",
            "In the foot of each page: the first digits of the SHA-256 of bench.toml, and of the"
                + " names and SHA-256 of all files read."),
        Row.of(
            "rounding",
            "To the nearest printed digit, a tie to the even digit (ISO 80000-1). A character that the"
                + " typeface lacks is printed as ?."));
  }

  private static List<Row> words() {
    return List.of(
        Row.of(
            "reading, result",
            "One number off the instrument; the mean of the readings of one" + " test."),
        Row.of(
            "control", "A sample whose value is known or stays the same, tested like any other."),
        Row.of(
            "stream",
            "The results of one control by one method on one instrument, in time" + " order."),
        Row.of(
            "baseline",
            "The results from which limits come; limits then stay until a person"
                + " revises them."),
        Row.of(
            "signal",
            "A rule broken on a stream. A stop signal holds the method, a notice asks"
                + " for a look; either stays open until its cause is recorded. A later good result"
                + " does not close it."),
        Row.of("allowance", "How far drift may carry a result before it is unfit for use."),
        Row.of(
            "last safe day",
            "The last day on which the chance that drift has used up the allowance is at most 5 %, unless"
                + " set otherwise."),
        Row.of(
            "as found, as left",
            "A control tested right before a calibration, and right after it."),
        Row.of(
            "steady, watch, hold",
            "No signal under the rules stated; go on and do what is asked;"
                + " report no results until a person has looked."));
  }

  private static List<String> cautions() {
    return List.of(
        "These are in-house production-control results. A claim that a fuel meets a specification"
            + " rests on the methods which that specification names, or on a correlation the buyer"
            + " or authority accepts.",
        "Release is governed by the specification, the contract, the law and the person"
            + " responsible. No signature here releases a batch.",
        "The statistics judge measurements. They do not judge the safety of a plant and override no"
            + " interlock, permit, fire rule or emergency procedure.",
        "Test reagents can burn, poison, ignite or sensitise: read label and safety data sheet of"
            + " the lot in hand, wear what they ask for, ventilate. Samples can hold methanol, which"
            + " is toxic by every route and burns with a flame that may be invisible: no heat, spark"
            + " or open container near; let hot samples cool before opening.",
        "Local codes and the advice of licensed professionals prevail wherever they differ from this"
            + " report. Where health or property depends on a number here, ask a qualified"
            + " statistician or metrologist.");
  }
}
