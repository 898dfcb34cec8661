package org.quietline.report;

/**
 * The few colours of the pages. Each meaning also has a shape or a word, and the colours differ in
 * lightness, so that a grey print says the same.
 */
public enum Colour {
  /** Near-black: text and results. */
  INK(0x1C1F26),
  /** Dark grey: second-rank text. */
  GREY(0x5C626C),
  /** Light grey: hairlines and the weighted mean. */
  PALE(0xA7ACB3),
  /** Warm and very pale: every second calibration. */
  TINT(0xF3EFE7),
  /** Rust: what needs a person. */
  ACCENT(0x9A3D12),
  /** Cool and dark: the line of a forecast. */
  FORECAST(0x1F5066),
  /** Cool: where the true value lies with 50 %. */
  FORECAST_HALF(0xA9BFC9),
  /** Cool and pale: where it lies with 80 %. */
  FORECAST_MOST(0xC9D8DE),
  /** Cool and very pale: where it lies with 95 %. */
  FORECAST_NEARLY_ALL(0xE4ECEF);

  private final int rgb;

  Colour(int rgb) {
    this.rgb = rgb;
  }

  /**
   * The colour in the sRGB space.
   *
   * @return red, green and blue in one number, 8 bits each
   */
  public int rgb() {
    return rgb;
  }
}
