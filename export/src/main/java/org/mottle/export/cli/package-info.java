/** The command line: what is typed, what is printed, and the exit codes. */
package org.mottle.export.cli;
