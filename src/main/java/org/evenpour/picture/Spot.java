package org.evenpour.picture;

import java.awt.Shape;

/**
 * A place in a picture that can be pointed at.
 *
 * @param shape where it was drawn
 * @param kind of the thing that it stands for: {@code mold}, {@code signal}, {@code turn}; empty
 *     where it only explains
 * @param name of the thing
 * @param says what it shows, in words
 */
public record Spot(Shape shape, String kind, String name, String says) {}
