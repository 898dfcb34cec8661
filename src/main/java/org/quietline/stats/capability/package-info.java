/**
 * Values against a specification: how far a population stays from its limits, and what one
 * uncertain result says about its own true value.
 *
 * <p>Where to start: {@link org.quietline.stats.capability.PerformanceIndex}; {@link
 * org.quietline.stats.capability.PercentileIndex} for skewed values, {@link
 * org.quietline.stats.capability.Conformance} for one result near a limit.
 */
package org.quietline.stats.capability;
