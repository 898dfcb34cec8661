package org.quietline.report;

import org.quietline.bench.SignalId;

/**
 * A notice on one story of stop signals.
 *
 * @param story the id of the story, that of its first signal
 * @param document the pages
 */
public record Notice(SignalId story, Document document) {}
