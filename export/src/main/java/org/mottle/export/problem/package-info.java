/** What is wrong with the input: every problem collected, one clear line each, told once. */
package org.mottle.export.problem;
