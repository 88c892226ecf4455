/**
 * The irrigation audit from files to files: catch cans and heads in, uniformity and coverage out.
 */
package org.mottle.export.audit;
