package org.quietline.report.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.quietline.report.Document;
import org.quietline.report.Invented;
import org.quietline.report.MonthlyReview;

/** The bytes, read back with another library. */
class PdfReportTest {
  /** No two letters further apart than this can touch: the largest size is 21 points. */
  private static final double TALLEST = 21;

  private static byte[] bytes(Document document, Paper paper) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PdfReport.write(document, paper, out);
    return out.toByteArray();
  }

  @Test
  void equalFindingsGiveEqualBytes() throws IOException {
    byte[] first = bytes(Specimens.bench(), Paper.A4);
    assertArrayEquals(first, bytes(Specimens.bench(), Paper.A4));
    assertTrue(first.length > 20_000 && first.length < 400_000, first.length + " bytes");
  }

  @Test
  void neitherLanguageNorTimeZoneOfTheMachineMatters() throws IOException {
    byte[] here = bytes(Specimens.bench(), Paper.A4);
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
      assertArrayEquals(here, bytes(Specimens.bench(), Paper.A4));
      Locale.setDefault(Locale.GERMANY);
      assertArrayEquals(here, bytes(Specimens.bench(), Paper.A4));
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void otherFindingsGiveAnotherFileId() throws IOException {
    assertNotEquals(id(Specimens.bench()), id(Specimens.empty()));
    assertEquals(id(Specimens.bench()), id(Specimens.bench()));
  }

  private static String id(Document document) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(bytes(document, Paper.A4))) {
      return pdf.getDocument().getDocumentID().toString();
    }
  }

  @Test
  void theTextCanBeReadBack() throws IOException {
    try (PDDocument pdf = Loader.loadPDF(bytes(Specimens.bench(), Paper.A4))) {
      String text = new PDFTextStripper().getText(pdf);
      for (String expected :
          List.of(
              "Of 4 methods, 1 is on hold, 2 need watching, 1 is steady.",
              "11 days left on calibration C-31, PM-1, to 11 November 2026.",
              "Is the calibration drifting?",
              "last safe day, 3 Nov",
              "allowance −0.0120",
              "C-31",
              "baseline",
              "415 rows: 408 taken in, 4 met before, 3 set aside.",
              "readings/october.csv, line 17, reading_1: \"O.18\" is not a number (a letter O where a"
                  + " zero belongs?). The row was set aside.",
              "√(Σd² / 2m)")) {
        assertTrue(text.contains(expected), expected);
      }
    }
  }

  @Test
  void fontsAreEmbeddedSubsetsOfTheBundledFaces() throws IOException {
    try (PDDocument pdf = Loader.loadPDF(bytes(Specimens.bench(), Paper.A4))) {
      List<String> names = new ArrayList<>();
      for (PDPage page : pdf.getPages()) {
        fonts(page.getResources(), names);
      }
      assertTrue(names.size() >= 10, names.toString());
      assertTrue(
          names.stream().allMatch(n -> n.matches("[A-Z]{6}\\+Lato-(Regular|Bold)")),
          names.toString());
    }
  }

  private static void fonts(PDResources resources, List<String> names) throws IOException {
    for (COSName name : resources.getFontNames()) {
      PDFont font = resources.getFont(name);
      assertTrue(font.isEmbedded(), font.getName());
      names.add(font.getName());
    }
    for (COSName name : resources.getXObjectNames()) {
      PDXObject object = resources.getXObject(name);
      PDFormXObject form = (PDFormXObject) object;
      if (form.getResources() != null) {
        fonts(form.getResources(), names);
      }
    }
  }

  @Test
  void titleLanguageAndBookmarksAreSet() throws IOException {
    try (PDDocument pdf = Loader.loadPDF(bytes(Specimens.bench(), Paper.LETTER))) {
      assertEquals(
          "Monthly review, October 2026, Tidewick Oil & Fuel, bench 1 (invented)",
          pdf.getDocumentInformation().getTitle());
      assertEquals(
          "2026-10-31T16:40:00Z",
          pdf.getDocumentInformation().getCreationDate().toInstant().toString());
      assertEquals("en-GB", pdf.getDocumentCatalog().getLanguage());
      assertTrue(pdf.getDocumentCatalog().getViewerPreferences().displayDocTitle());
      assertEquals(612, pdf.getPage(0).getMediaBox().getWidth(), 0.01);
      List<String> marks = new ArrayList<>();
      for (PDOutlineItem item : pdf.getDocumentCatalog().getDocumentOutline().children()) {
        marks.add(item.getTitle());
      }
      assertEquals(
          List.of(
              "At a glance",
              "Total glycerin, enzymatic kit, photometric",
              "Acid number, colour kit",
              "Free fatty acid in incoming oil",
              "Water by reagent",
              "What came in, and how to read this"),
          marks);
    }
  }

  @ParameterizedTest(name = "{0} on {2}")
  @MethodSource("org.quietline.report.pdf.Specimens#all")
  void wordsNeverRunIntoEachOtherNotEvenInPictures(String name, Document document, Paper paper)
      throws IOException {
    try (PDDocument pdf = Loader.loadPDF(bytes(document, paper))) {
      for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
        List<TextPosition> letters = letters(pdf, page);
        letters.sort(Comparator.comparing(TextPosition::getYDirAdj));
        assertTrue(letters.size() > 100, name + " page " + page);
        for (int i = 0; i < letters.size(); i++) {
          for (int j = i + 1; j < letters.size() && below(letters, i, j) < TALLEST; j++) {
            TextPosition a = letters.get(i);
            TextPosition b = letters.get(j);
            assertTrue(
                apart(a, b),
                () ->
                    name + ": " + a + " and " + b + " at " + a.getXDirAdj() + "," + a.getYDirAdj());
          }
        }
      }
    }
  }

  private static List<TextPosition> letters(PDDocument pdf, int page) throws IOException {
    List<TextPosition> letters = new ArrayList<>();
    PDFTextStripper stripper =
        new PDFTextStripper() {
          @Override
          protected void processTextPosition(TextPosition text) {
            if (!text.getUnicode().isBlank()) {
              letters.add(text);
            }
          }
        };
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    stripper.getText(pdf);
    return letters;
  }

  private static double below(List<TextPosition> letters, int i, int j) {
    return letters.get(j).getYDirAdj() - letters.get(i).getYDirAdj();
  }

  /**
   * Letters of one line may touch by kerning; letters of two lines may not share half an x-height.
   */
  private static boolean apart(TextPosition a, TextPosition b) {
    double across =
        Math.min(a.getXDirAdj() + a.getWidthDirAdj(), b.getXDirAdj() + b.getWidthDirAdj())
            - Math.max(a.getXDirAdj(), b.getXDirAdj());
    double up = Math.min(a.getFontSizeInPt(), b.getFontSizeInPt()) * 0.6;
    boolean oneLine = Math.abs(a.getYDirAdj() - b.getYDirAdj()) < up;
    return across < 1 || !oneLine;
  }

  @Test
  void aStreamThatFailsIsReported() {
    OutputStream broken =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException("the disk is full");
          }
        };
    IOException e =
        assertThrows(IOException.class, () -> PdfReport.write(Specimens.empty(), broken));
    assertEquals("the disk is full", e.getMessage());
  }

  @Test
  void textTheFacesLackIsMarkedAndNotDropped() throws IOException {
    Document document =
        MonthlyReview.of(Invented.findings("Bench 中文", Invented.accounting(0), List.of()), "0.1.0");
    try (PDDocument pdf = Loader.loadPDF(bytes(document, Paper.A4))) {
      assertTrue(new PDFTextStripper().getText(pdf).contains("Bench ??"));
    }
  }
}
