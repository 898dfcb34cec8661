/**
 * Two methods, laboratories or instruments on the same samples: do they agree, and by how much not.
 *
 * <p>Where to start: {@link org.quietline.stats.agreement.LimitsOfAgreement}; {@link
 * org.quietline.stats.agreement.DemingLine} and {@link org.quietline.stats.agreement.PassingBablok}
 * for a difference that grows with the level, {@link org.quietline.stats.agreement.ComparisonScore}
 * for one result against a reference. A correlation coefficient says nothing about agreement and is
 * not here.
 */
package org.quietline.stats.agreement;
