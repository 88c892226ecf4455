/**
 * Floor 3: the operators' work. Station plans, the walk with its clock, what the probe reads, what
 * the receiver logs, and the mistakes planted on purpose.
 */
package org.mottle.demo.walk;
