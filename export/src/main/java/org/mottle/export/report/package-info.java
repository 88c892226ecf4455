/** Pages for people: one file each, opening offline, printing well. */
package org.mottle.export.report;
