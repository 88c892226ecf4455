/** The main job: from files through the engine to layers, one direction. */
package org.mottle.export.job;
