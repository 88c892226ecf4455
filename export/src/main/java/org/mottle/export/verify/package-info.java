/**
 * Reads a delivered folder back and holds it against its record. The readers here are apart from
 * the writers and share no code with them, so that a fault of one is not repeated by the other.
 */
package org.mottle.export.verify;
