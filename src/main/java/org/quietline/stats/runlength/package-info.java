/**
 * What a chart costs and finds: how many values, or sets of values, it takes until it signals.
 *
 * <p>Where to start: {@link org.quietline.stats.runlength.RunLength#of}, with a {@link
 * org.quietline.stats.runlength.Chart} and a {@link org.quietline.stats.runlength.Change}; {@link
 * org.quietline.stats.runlength.BaselineRunLength} says what limits from few values do. Everything
 * is in deviations of single values from the centre. Equations, chains and simulation stay inside:
 * a {@code Walk} is a chart whose chances are followed value by value, on points of a {@code Line}
 * or in the states of a {@code ZoneChain}; a {@code Follower} is one that is given random values.
 */
package org.quietline.stats.runlength;
