package org.quietline.assess;

import java.util.OptionalInt;

/**
 * Is the validity right? By the lines of the windows so far: how long a window like those would
 * stay inside the allowance.
 *
 * @param validDays the validity that is set, in days
 * @param safeChance the chance of being beyond the allowance that a safe day may carry
 * @param averageDays the last day on which the average window is safe; empty if no day is
 * @param uncheckedDays the last day on which a new window is safe before its first check; empty if
 *     not even the first day is
 * @param followedTo the longest that any window was followed, in days: beyond it nothing was seen
 * @param windows how many windows that rests on
 */
public record IntervalReview(
    int validDays,
    double safeChance,
    OptionalInt averageDays,
    OptionalInt uncheckedDays,
    double followedTo,
    int windows) {}
