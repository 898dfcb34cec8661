/** Files of a bench folder become bench records; what cannot be read is set aside. */
package org.quietline.intake;
