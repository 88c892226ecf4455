/** Floor 0: named, seeded sub-streams of random numbers and fixed-digit numbers as text. */
package org.mottle.demo.random;
