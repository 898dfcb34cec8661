/**
 * Models fitted to data: lines and other models linear in their coefficients, what they say about a
 * place between or beyond the points, components of variance, and precision by level.
 *
 * <p>Where to start: {@link org.quietline.stats.model.StraightLine} for one line, {@link
 * org.quietline.stats.model.LeastSquares} for anything wider, {@link
 * org.quietline.stats.model.InversePrediction} to read a line backwards, {@link
 * org.quietline.stats.model.NestedAnova} for groups within groups, {@link
 * org.quietline.stats.model.PrecisionChoice} for pairs at many levels, {@link
 * org.quietline.stats.model.ModelShares} to compare models.
 */
package org.quietline.stats.model;
