/** What the screens show and how it changes, without a screen: no Swing, no threads. */
@NullMarked
package org.evenpour.view.model;

import org.jspecify.annotations.NullMarked;
