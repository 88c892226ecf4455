package org.mottle.demo.random;

import java.nio.charset.StandardCharsets;

/**
 * A named sub-stream of random numbers. The name (green, survey, component) is hashed into the seed
 * (FNV-1a, 64 bit), so that one more draw in one component moves no other; the numbers are those of
 * SplitMix64 (Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators"). Only
 * integer arithmetic and {@link StrictMath} are used: the same numbers on any machine. One thread.
 */
public final class Stream {

  private static final long GOLDEN = 0x9E3779B97F4A7C15L;
  private long state;
  private double spare = Double.NaN;

  private Stream(long state) {
    this.state = state;
  }

  /** The stream that {@code seed} holds under this name. */
  public static Stream of(long seed, String... name) {
    long hash = 0xCBF29CE484222325L;
    for (byte b : String.join("/", name).getBytes(StandardCharsets.UTF_8)) {
      hash = (hash ^ (b & 0xff)) * 0x100000001B3L;
    }
    return new Stream(mix(seed * GOLDEN + mix(hash)));
  }

  /** 64 random bits. */
  public long bits() {
    state += GOLDEN;
    return mix(state);
  }

  /** Uniform in [0, 1), 53 bits. */
  public double uniform() {
    return (bits() >>> 11) * 0x1.0p-53;
  }

  /** Uniform integer in [0, bound). */
  public int below(int bound) {
    return (int) (uniform() * bound);
  }

  /** Standard normal, by the polar method (Marsaglia and Bray 1964). */
  public double gaussian() {
    if (!Double.isNaN(spare)) {
      double value = spare;
      spare = Double.NaN;
      return value;
    }
    double u;
    double v;
    double s;
    do {
      u = 2 * uniform() - 1;
      v = 2 * uniform() - 1;
      s = u * u + v * v;
    } while (s >= 1 || s == 0);
    double scale = Math.sqrt(-2 * StrictMath.log(s) / s);
    spare = v * scale;
    return u * scale;
  }

  private static long mix(long bits) {
    long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
