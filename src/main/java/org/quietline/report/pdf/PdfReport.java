package org.quietline.report.pdf;

import com.lowagie.text.DocumentException;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfDestination;
import com.lowagie.text.pdf.PdfLiteral;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfOutline;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.format.DateTimeFormatter;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.quietline.report.Document;

/** Writes a document as PDF. */
public final class PdfReport {
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("'D:'uuuuMMddHHmmss", Locale.ROOT);
  private static final String LANGUAGE = "en-GB";
  private static final int ID_DIGITS = 32;

  private PdfReport() {}

  /**
   * Writes a document on A4.
   *
   * @param document the pages as values
   * @param out where to write; stays open
   * @throws IOException when the bytes cannot be written
   */
  public static void write(Document document, OutputStream out) throws IOException {
    write(document, Paper.A4, out);
  }

  /**
   * Writes a document.
   *
   * @param document the pages as values
   * @param paper the size of paper
   * @param out where to write; stays open
   * @throws IOException when the bytes cannot be written
   */
  public static void write(Document document, Paper paper, OutputStream out) throws IOException {
    Fonts fonts = new Fonts();
    List<Sheet> sheets = Layout.of(document, new Setter(fonts), paper);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      paint(document, sheets, paper, fonts, bytes);
    } catch (DocumentException e) {
      throw new IOException("the PDF could not be made", e);
    }
    bytes.writeTo(out);
  }

  private static void paint(
      Document document, List<Sheet> sheets, Paper paper, Fonts fonts, OutputStream out)
      throws DocumentException {
    Rectangle size = new Rectangle((float) paper.width(), (float) paper.height());
    com.lowagie.text.Document pdf = new com.lowagie.text.Document(size, 0, 0, 0, 0);
    PdfWriter writer = PdfWriter.getInstance(pdf, out);
    writer.setPdfVersion(PdfWriter.VERSION_1_7);
    // Without it the library writes the table of objects in the digits of the machine's language.
    writer.setFullCompression();
    writer.setViewerPreferences(PdfWriter.PageModeUseOutlines | PdfWriter.DisplayDocTitle);
    pdf.addTitle(document.title());
    pdf.addSubject(document.subject());
    pdf.addAuthor(document.bench());
    pdf.addCreator("Quietline");
    pdf.open();
    identify(writer, document, sheets);
    PdfContentByte content = writer.getDirectContent();
    Painter painter = new Painter(content, fonts, paper.height());
    for (Sheet sheet : sheets) {
      if (sheet.number() > 1) {
        pdf.newPage();
      }
      writer.setPageEmpty(false);
      if (!sheet.bookmark().isEmpty()) {
        float top = (float) paper.height();
        PdfDestination here = new PdfDestination(PdfDestination.FITH, top);
        new PdfOutline(content.getRootOutline(), here, sheet.bookmark());
      }
      sheet.items().forEach(painter::paint);
    }
    pdf.close();
  }

  private static void identify(PdfWriter writer, Document document, List<Sheet> sheets) {
    PdfString asOf = new PdfString(MOMENT.format(document.asOf()));
    writer.getInfo().put(PdfName.CREATIONDATE, asOf);
    writer.getInfo().put(PdfName.MODDATE, asOf);
    String id = id(document, sheets);
    PdfLiteral pair = new PdfLiteral("[<" + id + "><" + id + ">]");
    writer.getInfo().put(PdfName.FILEID, pair);
    writer.getExtraCatalog().put(PdfName.LANG, new PdfString(LANGUAGE));
  }

  private static String id(Document document, List<Sheet> sheets) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(document.toString().getBytes(StandardCharsets.UTF_8));
      digest.update(sheets.toString().getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest.digest()).substring(0, ID_DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("SHA-256 is part of each Java", e);
    }
  }
}
