package org.quietline.assess;

/**
 * A control material's baseline mean against its assigned value. Source: ASTM D6299 practice, with
 * the assigned value's uncertainty counted in.
 *
 * @param difference the mean less the assigned value, in the method's unit
 * @param standardUncertainty of the difference, from the baseline's scatter and the assigned value
 * @param significant whether the difference is more than chance explains, at 5 %
 */
public record MaterialBias(double difference, double standardUncertainty, boolean significant) {}
