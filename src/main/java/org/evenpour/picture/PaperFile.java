package org.evenpour.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.zip.DeflaterOutputStream;

/**
 * Pages for a printer, as a document that any reader shows and prints (PDF 1.4; ISO 32000-1): each
 * page is one gray image of 200 dots an inch, so that any script that a log holds is printed as it
 * is seen, and no font need lie in the file. Its letters cannot be searched for; the tables can.
 */
public final class PaperFile {
  /** A choice: small letters are sharp on paper, and a page takes some tens of kilobytes. */
  private static final int DOTS = 200;

  private static final double POINTS = 72;

  private PaperFile() {}

  /**
   * Writes pages; the same pages give the same bytes.
   *
   * @param width of the paper, in points
   * @param height the same
   */
  public static void write(List<Picture> pages, int width, int height, Ink ink, OutputStream out)
      throws IOException {
    Counting file = new Counting(out);
    List<Long> places = new ArrayList<>();
    file.say("%PDF-1.4\n%\u00e2\u00e3\u00cf\u00d3\n");
    StringBuilder kids = new StringBuilder();
    for (int i = 0; i < pages.size(); i++) {
      kids.append(3 + 3 * i).append(" 0 R ");
    }
    object(file, places, "<< /Type /Catalog /Pages 2 0 R >>");
    object(file, places, "<< /Type /Pages /Count " + pages.size() + " /Kids [ " + kids + "] >>");
    for (int i = 0; i < pages.size(); i++) {
      int its = 3 + 3 * i;
      object(
          file,
          places,
          String.format(
              Locale.ROOT,
              "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 %d %d] /Contents %d 0 R"
                  + " /Resources << /XObject << /Im %d 0 R >> >> >>",
              width,
              height,
              its + 1,
              its + 2));
      String draw = String.format(Locale.ROOT, "q %d 0 0 %d 0 0 cm /Im Do Q", width, height);
      stream(file, places, "", draw.getBytes(StandardCharsets.ISO_8859_1));
      BufferedImage image = image(pages.get(i), width, height, ink);
      stream(
          file,
          places,
          String.format(
              Locale.ROOT,
              " /Type /XObject /Subtype /Image /Width %d /Height %d /ColorSpace /DeviceGray"
                  + " /BitsPerComponent 8 /Filter /FlateDecode",
              image.getWidth(),
              image.getHeight()),
          packed(image));
    }
    long table = file.count;
    file.say("xref\n0 " + (places.size() + 1) + "\n0000000000 65535 f \n");
    for (long place : places) {
      file.say(String.format(Locale.ROOT, "%010d 00000 n \n", place));
    }
    file.say(
        "trailer\n<< /Size "
            + (places.size() + 1)
            + " /Root 1 0 R >>\nstartxref\n"
            + table
            + "\n%%EOF\n");
    file.flush();
  }

  private static void object(Counting file, List<Long> places, String content) throws IOException {
    places.add(file.count);
    file.say(places.size() + " 0 obj\n" + content + "\nendobj\n");
  }

  private static void stream(Counting file, List<Long> places, String about, byte[] content)
      throws IOException {
    places.add(file.count);
    file.say(places.size() + " 0 obj\n<< /Length " + content.length + about + " >>\nstream\n");
    file.write(content);
    file.say("\nendstream\nendobj\n");
  }

  private static BufferedImage image(Picture page, int width, int height, Ink ink) {
    double scale = DOTS / POINTS;
    BufferedImage image =
        new BufferedImage(
            (int) Math.round(width * scale),
            (int) Math.round(height * scale),
            BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D g = image.createGraphics();
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, image.getWidth(), image.getHeight());
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    g.scale(scale, scale);
    page.paint(g, new Rectangle2D.Double(0, 0, width, height), ink);
    g.dispose();
    return image;
  }

  private static byte[] packed(BufferedImage image) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DeflaterOutputStream out = new DeflaterOutputStream(bytes)) {
      out.write(((DataBufferByte) image.getRaster().getDataBuffer()).getData());
    }
    return bytes.toByteArray();
  }

  /** Knows how far it has come: the table at the end says where each object begins. */
  private static final class Counting extends OutputStream {
    private final OutputStream out;
    private long count;

    Counting(OutputStream out) {
      this.out = out;
    }

    void say(String text) throws IOException {
      write(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    @Override
    public void write(int b) throws IOException {
      out.write(b);
      count++;
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      out.write(bytes, from, length);
      count += length;
    }

    @Override
    public void flush() throws IOException {
      out.flush();
    }
  }
}
