/** Floor 0: checks of arguments, shared by every room. */
package org.mottle.engine.check;
