package org.quietline.intake;

import java.util.List;
import java.util.Set;

/**
 * The columns a sheet may have.
 *
 * @param required columns without which no row can be read
 * @param optional columns that may be left out
 * @param vital optional columns that change what a number means, so that a header that comes close
 *     to one of them is not let pass
 * @param numbered patterns of columns that come as 1, 2, 3 and so on, with # for the number; the
 *     first of them says how many there are
 */
record Layout(
    List<String> required, List<String> optional, Set<String> vital, List<String> numbered) {}
