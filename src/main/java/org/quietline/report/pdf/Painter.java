package org.quietline.report.pdf;

import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.FontMapper;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfGraphics2D;
import com.lowagie.text.pdf.PdfTemplate;
import java.awt.Color;
import java.awt.Font;
import java.util.Locale;
import org.quietline.report.Colour;
import org.quietline.report.chart.ChartPainter;
import org.quietline.report.pdf.Item.Box;

/** Paints placed items onto the content of a page. */
final class Painter {
  private final PdfContentByte content;
  private final Fonts fonts;
  private final double height;

  Painter(PdfContentByte content, Fonts fonts, double height) {
    this.content = content;
    this.fonts = fonts;
    this.height = height;
  }

  void paint(Item item) {
    if (item instanceof Item.Run run) {
      run(run);
    } else if (item instanceof Item.Rule rule) {
      line(rule.weight(), rule.colour());
      content.moveTo((float) rule.x(), up(rule.y()));
      content.lineTo((float) (rule.x() + rule.width()), up(rule.y()));
      content.stroke();
    } else if (item instanceof Item.Tick tick) {
      line(0.6, tick.colour());
      float size = (float) tick.size();
      content.rectangle((float) tick.x(), up(tick.y() + tick.size()), size, size);
      content.stroke();
    } else if (item instanceof Item.Picture picture) {
      picture(picture);
    }
  }

  private void run(Item.Run run) {
    content.beginText();
    content.setFontAndSize(fonts.base(run.face()), (float) run.size());
    content.setColorFill(colour(run.colour()));
    content.setTextMatrix((float) run.x(), up(run.baseline()));
    content.showText(run.text());
    content.endText();
  }

  private void line(double weight, Colour colour) {
    content.setLineWidth((float) weight);
    content.setColorStroke(colour(colour));
  }

  private void picture(Item.Picture picture) {
    Box box = picture.box();
    float w = (float) box.width();
    float h = (float) box.height();
    PdfTemplate template = content.createTemplate(w, h);
    PdfGraphics2D g = new PdfGraphics2D(template, w, h, mapper(), false, false, 0f);
    ChartPainter.draw(picture.chart(), g, box.width(), box.height());
    g.dispose();
    content.addTemplate(template, (float) box.x(), up(box.bottom()));
  }

  /** A face loaded from a file has the plain style even when it is bold, so its name decides. */
  private FontMapper mapper() {
    return new FontMapper() {
      @Override
      public BaseFont awtToPdf(Font font) {
        boolean bold = font.getFontName(Locale.ROOT).contains("Bold");
        return fonts.base(Face.of(bold));
      }

      @Override
      public Font pdfToAwt(BaseFont font, int size) {
        throw new IllegalStateException("pictures are only written, never read");
      }
    };
  }

  private float up(double y) {
    return (float) (height - y);
  }

  private static Color colour(Colour colour) {
    return new Color(colour.rgb());
  }
}
