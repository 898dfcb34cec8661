/**
 * The bench as its owner would describe it: methods, instruments, materials, people, results,
 * calibrations, reagent lots, and the causes found for signals.
 *
 * <p>Start with {@link org.quietline.bench.Bench}. Everything here is an immutable record that is
 * checked where it is made. What the bench wrote down keeps its digits as {@link
 * java.math.BigDecimal}; nothing here computes a statistic, and nothing here knows files, pages or
 * commands. Times are local times of the bench's own time zone. A value that may be absent is an
 * {@link java.util.Optional}, a reading that is not a plain number is a case of {@link
 * org.quietline.bench.Reading}.
 *
 * <p>Words: reading and result after ISO 3534-2, control material after ISO Guide 30, signal and
 * baseline ("phase 1") after ISO 7870-1, action after ISO/IEC 17025:2017, 8.7.
 */
package org.quietline.bench;
