/** Floor 4: the files of the course as bytes; small ones in memory, large ones straight to disk. */
package org.mottle.demo.files;
