/**
 * Looks at one file of unknown layout, gathers evidence of how it is meant, and proposes a {@code
 * [[sheet]]} for it.
 *
 * <p>Start with {@link org.quietline.intake.peek.Peek}. Only the first megabytes and the end of a
 * file are looked at. Words in a header are evidence, and so is what stands below them; where the
 * two leave more than one meaning open, a question is asked and its answers are offered as lines,
 * never picked. The rows shown are those that {@link org.quietline.intake.TrialReading} makes of
 * the proposal, which reads as a review does; nothing here turns text into results.
 *
 * <p>The package knows nothing of statistics, pages or commands. It never writes.
 */
package org.quietline.intake.peek;
