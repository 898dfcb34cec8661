package org.quietline.cli;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Months and days as a user types them. */
final class Dates {
  private Dates() {}

  /** A month such as {@code 2026-10}. */
  static final class Month implements ITypeConverter<YearMonth> {
    Month() {}

    @Override
    public YearMonth convert(String text) {
      try {
        return YearMonth.parse(text);
      } catch (DateTimeException e) {
        throw new TypeConversionException("\"" + text + "\" is no month. Write it as in 2026-10.");
      }
    }
  }

  /** A day such as {@code 2026-10-14}. */
  static final class Day implements ITypeConverter<LocalDate> {
    Day() {}

    @Override
    public LocalDate convert(String text) {
      try {
        return LocalDate.parse(text);
      } catch (DateTimeException e) {
        throw new TypeConversionException("\"" + text + "\" is no day. Write it as in 2026-10-14.");
      }
    }
  }
}
