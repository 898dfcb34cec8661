/**
 * Quietline: a bench folder of test results in, a monthly review of pages and findings out.
 *
 * <pre>
 *  bench.toml, *.csv --> intake --> bench --> assess --> findings --> report --> PDF, JSON, screen
 *                          |                    |  |                    |
 *                          +-- rows set aside --+--+--------------------+
 *                                               |
 *                                               +-- stats (pure numbers)
 * </pre>
 *
 * <p>Data walk one way. {@link org.quietline.bench} names what the owner of a bench keeps, {@link
 * org.quietline.intake} reads it from files and sets aside what it cannot read, {@link
 * org.quietline.assess} puts the questions and computes the answers with {@link
 * org.quietline.stats}, {@link org.quietline.report} words and draws them, {@link
 * org.quietline.cli} holds the commands.
 *
 * <p>Start reading at {@code cli.ReviewCommand}: it walks the whole way in one screen.
 */
package org.quietline;
