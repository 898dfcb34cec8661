/**
 * Sums in two doubles, roots, quadrature and the checks of arguments that the other packages of
 * {@link org.quietline.stats} stand on.
 *
 * <p>Only the packages of {@code stats} look in here. Nothing knows what a number means.
 */
package org.quietline.stats.numeric;
