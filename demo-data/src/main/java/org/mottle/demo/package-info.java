/**
 * The invented course Ostrevane Heath: nine greens, six surveys, planted mistakes, and the truth
 * behind them, from one seed. {@link org.mottle.demo.Course} opens the files of the default seed,
 * {@link org.mottle.demo.CourseGenerator} makes any other, {@link org.mottle.demo.GenerateCourse}
 * is the command. Depends on neither the engine nor the tool.
 */
package org.mottle.demo;
