package org.quietline.intake.peek;

/**
 * One thing found out about a file.
 *
 * @param about what it is about, such as the encoding
 * @param found what was found
 * @param why what in the file says so
 */
public record Evidence(String about, String found, String why) {}
