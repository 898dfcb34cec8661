package org.quietline.intake;

import org.quietline.bench.Accounting;
import org.quietline.bench.Bench;

/**
 * What was read from a bench folder.
 *
 * @param bench the bench with every row taken in
 * @param accounting what became of every row
 * @param settingsFingerprint the first eight hexadecimal digits of the SHA-256 of {@code
 *     bench.toml}
 * @param dataFingerprint the first eight hexadecimal digits of the SHA-256 over name and SHA-256 of
 *     every sheet read, in name order
 */
public record Intake(
    Bench bench, Accounting accounting, String settingsFingerprint, String dataFingerprint) {}
