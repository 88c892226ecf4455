/**
 * The record of a run and of a delivery: what went in, what came out, each with its SHA-256, as
 * JSON.
 */
package org.mottle.export.record;
