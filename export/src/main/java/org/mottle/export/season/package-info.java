/**
 * Several surveys of the same greens, from files to files: change, dry-down, persistence, drainage.
 */
package org.mottle.export.season;
