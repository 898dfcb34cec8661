/**
 * The questions a bench asks each month, one class a question: do readings agree, is the stream in
 * control, is the calibration drifting, how precise, how capable, what is out of date, which
 * records contradict each other, which numbers look like slips of the pen, and what calibrations,
 * blanks, pairs, retests and related methods say that cost no reagent.
 *
 * <p>Start with {@link org.quietline.assess.Review}, which puts them all and returns {@link
 * org.quietline.assess.Findings}. Classes here turn bench records into arrays, ask {@link
 * org.quietline.stats}, and put the numbers back beside the records they came from. They compute
 * and never word: no rounding, no sentences for a page, no files. Numbers are in the method's unit
 * at full double precision.
 *
 * <p>What cannot be said is a value too: an {@link org.quietline.assess.Answer} is {@link
 * org.quietline.assess.Answer.Known} or {@link org.quietline.assess.Answer.CannotSay} with what it
 * needs. Sources of the methods: ISO 4259-4, ISO 7870-2 and -6, ISO 5725-6, ISO 22514-2.
 */
package org.quietline.assess;
