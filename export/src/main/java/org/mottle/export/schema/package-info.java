/**
 * What every layer and table holds, described once: field, unit, type, meaning. The writers, the
 * verification and the data dictionary take it from here.
 */
package org.mottle.export.schema;
