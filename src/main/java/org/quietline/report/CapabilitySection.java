package org.quietline.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.quietline.assess.Capability;
import org.quietline.assess.Capability.Batch;
import org.quietline.assess.MethodFindings;
import org.quietline.bench.Method;
import org.quietline.report.Block.Caption;
import org.quietline.report.Block.Figure;
import org.quietline.report.Block.Heading;
import org.quietline.report.Block.Paragraph;

/** "What is the process capable of?" */
final class CapabilitySection {
  private static final double HEIGHT = 92;

  /** From fewer results a shape that is not normal is mostly missed. */
  private static final int ENOUGH_FOR_SHAPE = 30;

  private final Method method;
  private final Numbers numbers;

  private CapabilitySection(Method method) {
    this.method = method;
    this.numbers = new Numbers(method.decimals());
  }

  /** The section of one method. */
  static List<Block> of(MethodFindings findings) {
    CapabilitySection section = new CapabilitySection(findings.method());
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Heading("What is the process capable of?"));
    blocks.add(
        findings
            .capability()
            .value()
            .filter(c -> !c.batches().isEmpty())
            .map(section::figure)
            .orElseGet(() -> cannotSay(findings)));
    return blocks;
  }

  private static Block cannotSay(MethodFindings findings) {
    return Paragraph.body(
        "Cannot say: " + findings.capability().why().orElse("there are no product results") + ".");
  }

  private Block figure(Capability capability) {
    List<Paragraph> side = new ArrayList<>();
    side.add(index(capability).in(Colour.INK));
    side.add(Paragraph.small(beyond(capability)));
    side.add(Paragraph.small(share(capability)));
    int n = capability.batches().size();
    return new Figure(
        "Batches against the limit",
        method.unit()
            + ", n = "
            + n
            + method.limits().flatMap(Method.ProductLimits::source).map(s -> "; " + s).orElse(""),
        side,
        BatchPictures.of(capability, numbers),
        HEIGHT,
        List.of(Caption.of(footnote(capability))),
        "Chart of " + n + " product results in time order against their limits.");
  }

  private static Paragraph index(Capability capability) {
    String of = capability.shape() == Capability.Shape.LOGNORMAL ? " of the logarithms " : " ";
    return Paragraph.small(
        capability
            .index()
            .value()
            .map(
                i ->
                    "Performance index"
                        + of
                        + Numbers.fixed(i.ppk(), 2)
                        + ", with 95 % confidence at least "
                        + Numbers.fixed(i.lower95(), 2)
                        + ". To be expected beyond: "
                        + share(i.expectedBeyondPerMillion() / 1e6)
                        + " (95 % interval "
                        + share(i.beyond95().lower())
                        + " to "
                        + share(i.beyond95().upper())
                        + ").")
            .orElse("Performance index: cannot say, " + capability.index().why().orElse("") + "."));
  }

  private static String share(double share) {
    return share < 1e-6
        ? "under 1 in a million"
        : share < 1e-3 ? Numbers.figures(1e6 * share, 2) + " in a million" : Numbers.percent(share);
  }

  private String beyond(Capability capability) {
    String count =
        capability.beyond()
            + " of "
            + (capability.batches().size() + capability.censoredBeyond())
            + " beyond";
    String names =
        capability.batches().stream()
            .filter(b -> BatchPictures.beyond(b, capability))
            .limit(3)
            .map(Batch::sample)
            .collect(Collectors.joining(", "));
    String dots = capability.beyond() > 3 ? ", …" : "";
    return names.isEmpty() ? count + "." : count + " (ringed): " + names + dots + ".";
  }

  private static String share(Capability capability) {
    return capability
        .measurementShare()
        .value()
        .map(s -> "Measurement makes " + Numbers.percent(s) + " of their variance.")
        .orElse(
            "Share of measurement: cannot say, "
                + capability.measurementShare().why().orElse("")
                + ".");
  }

  private static String shape(Capability capability) {
    if (capability.bounds() > 0) {
      return Numbers.count(capability.bounds(), "result is", "results are")
          + " only a bound and used as that, the shape taken as "
          + capability.shape().key();
    }
    String chance = Numbers.percent(capability.normalChance().orElse(0));
    return switch (capability.shape()) {
      case NORMAL ->
          capability.batches().size() < ENOUGH_FOR_SHAPE
              ? "too few to judge the shape"
              : "nothing speaks against a normal shape";
      case LOGNORMAL ->
          "the shape is not normal (chance "
              + chance
              + "), nothing speaks against normal logarithms";
      case NEITHER -> "the shape is not normal (chance " + chance + ")";
    };
  }

  private String footnote(Capability capability) {
    String shape = shape(capability);
    String left =
        capability.leftOut() == 0
            ? ""
            : " "
                + Numbers.count(capability.leftOut(), "result", "results")
                + " left out: no number, or a bound that does not belong to the others' shape.";
    return "Mean "
        + numbers.fine(capability.mean())
        + ", deviation "
        + Numbers.uncertainty(capability.deviation())
        + "; "
        + shape
        + ". It describes past batches, and speaks of later ones only if nothing changes."
        + left;
  }
}
