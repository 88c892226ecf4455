/** What was brought back from the field, read and reviewed: shared by review and map. */
package org.mottle.export.field;
