package org.mottle.engine.simulation;

/**
 * Standard normal numbers from a seed and the number of a sub-stream: the same on every machine and
 * Java version, and every sub-stream by itself.
 *
 * <p>Random bits are xoshiro256++ (Blackman & Vigna 2021), its state filled by splitmix64 (Steele,
 * Lea & Flood 2014) from a mixture of seed and stream. Normals are by the ziggurat of 256 layers
 * (Marsaglia & Tsang 2000) with the layer drawn from other bits than the place in it (Doornik
 * 2005); wedges and tail are exact. About 2 ns a number. Not for several threads.
 */
public final class NormalStream {
  private static final long GOLDEN = 0x9E3779B97F4A7C15L;
  private static final double PER_53_BITS = 0x1p-53;

  private static final int LAYERS = 256;

  /** Where the tail begins, and the area of every layer (Marsaglia & Tsang 2000). */
  private static final double TAIL = 3.6541528853610088;

  private static final double AREA = 0.00492867323397465535;

  /** Right edge of layer i, and exp(-x²/2) there. */
  private static final double[] EDGE = new double[LAYERS + 1];

  private static final double[] HEIGHT = new double[LAYERS + 1];

  static {
    double f = density(TAIL);
    EDGE[0] = AREA / f;
    EDGE[1] = TAIL;
    for (int i = 2; i < LAYERS; i++) {
      EDGE[i] = StrictMath.sqrt(-2 * StrictMath.log(AREA / EDGE[i - 1] + density(EDGE[i - 1])));
    }
    for (int i = 0; i <= LAYERS; i++) {
      HEIGHT[i] = density(EDGE[i]);
    }
  }

  private long s0;
  private long s1;
  private long s2;
  private long s3;

  /**
   * @param seed of the whole work
   * @param stream number of the sub-stream
   */
  public NormalStream(long seed, long stream) {
    long at = mixed(seed + GOLDEN) ^ mixed(mixed(stream * GOLDEN + GOLDEN) + seed);
    s0 = mixed(at += GOLDEN);
    s1 = mixed(at += GOLDEN);
    s2 = mixed(at += GOLDEN);
    s3 = mixed(at + GOLDEN);
  }

  private static double density(double x) {
    return StrictMath.exp(-0.5 * x * x);
  }

  /** The finaliser of splitmix64. */
  private static long mixed(long z) {
    long a = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    long b = (a ^ (a >>> 27)) * 0x94D049BB133111EBL;
    return b ^ (b >>> 31);
  }

  /** 64 random bits. */
  public long bits() {
    long result = Long.rotateLeft(s0 + s3, 23) + s0;
    long t = s1 << 17;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= t;
    s3 = Long.rotateLeft(s3, 45);
    return result;
  }

  /** Uniform in (0, 1]. */
  private double uniform() {
    return ((bits() >>> 11) + 1) * PER_53_BITS;
  }

  /** One standard normal number. */
  public double next() {
    long random = bits();
    int layer = (int) random & (LAYERS - 1);
    // 53 bits with sign, apart from the eight of the layer
    double x = (random >> 11) * 0x1p-52 * EDGE[layer];
    return Math.abs(x) < EDGE[layer + 1] ? x : rare(layer, x);
  }

  /** Fills [0, count) with normals times the scale there: the numbers that {@link #next} gives. */
  void fill(double[] scale, int count, double[] into) {
    // the state in local variables: half the time of a call of next() each
    long a = s0;
    long b = s1;
    long c = s2;
    long d = s3;
    for (int i = 0; i < count; i++) {
      long random = Long.rotateLeft(a + d, 23) + a;
      long t = b << 17;
      c ^= a;
      d ^= b;
      b ^= c;
      a ^= d;
      c ^= t;
      d = Long.rotateLeft(d, 45);
      int layer = (int) random & (LAYERS - 1);
      double x = (random >> 11) * 0x1p-52 * EDGE[layer];
      if (Math.abs(x) >= EDGE[layer + 1]) {
        keep(a, b, c, d);
        x = rare(layer, x);
        a = s0;
        b = s1;
        c = s2;
        d = s3;
      }
      into[i] = x * scale[i];
    }
    keep(a, b, c, d);
  }

  private void keep(long a, long b, long c, long d) {
    s0 = a;
    s1 = b;
    s2 = c;
    s3 = d;
  }

  /** Outside the inner rectangle of its layer: about once in a hundred. */
  private double rare(int layer, double first) {
    int at = layer;
    double x = first;
    while (true) {
      if (at == 0) {
        return tail(x < 0);
      }
      double y = HEIGHT[at] + uniform() * (HEIGHT[at + 1] - HEIGHT[at]);
      if (y < density(x)) {
        return x;
      }
      long random = bits();
      at = (int) random & (LAYERS - 1);
      x = (random >> 11) * 0x1p-52 * EDGE[at];
      if (Math.abs(x) < EDGE[at + 1]) {
        return x;
      }
    }
  }

  /** Beyond the last layer, by Marsaglia's exponential rejection. */
  private double tail(boolean negative) {
    while (true) {
      double x = -StrictMath.log(uniform()) / TAIL;
      double y = -StrictMath.log(uniform());
      if (2 * y > x * x) {
        return negative ? -(TAIL + x) : TAIL + x;
      }
    }
  }
}
