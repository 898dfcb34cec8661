/** The commands. */
package org.quietline.cli;
