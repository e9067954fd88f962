package org.evenpour.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Drawings as a reader of the format takes them in: the runtime's XML reader, which is strict. */
class DrawingTest {

  /** What a picture draws. */
  private interface Strokes {
    void on(Graphics2D g);
  }

  private static String drawn(Strokes strokes) throws IOException {
    Drawing drawing = new Drawing(800, 400);
    strokes.on(drawing.pen());
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    drawing.write(out);
    return out.toString(StandardCharsets.UTF_8);
  }

  private static Document read(String svg) throws Exception {
    DocumentBuilderFactory strict = DocumentBuilderFactory.newDefaultNSInstance();
    strict.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    strict.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
    strict.setAttribute(XMLConstants.ACCESS_EXTERNAL_DTD, "");
    return strict
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
  }

  private static List<Element> all(Document svg, String name) {
    NodeList found = svg.getElementsByTagNameNS("http://www.w3.org/2000/svg", name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      elements.add((Element) found.item(i));
    }
    return elements;
  }

  private static List<String> texts(String svg) throws Exception {
    return all(read(svg), "text").stream().map(Element::getTextContent).toList();
  }

  /** The attribute where it is given, here or by what stands around. */
  private static String given(Element element, String attribute) {
    Element at = element;
    while (!at.hasAttribute(attribute)) {
      at = (Element) at.getParentNode();
    }
    return at.getAttribute(attribute);
  }

  private static Picture series(String title) {
    double[] y = new double[1000];
    Arrays.setAll(y, i -> i % 7);
    return new SeriesPicture(
        new Points(IntStream.range(0, y.length).asDoubleStream().toArray(), y, new int[] {3}),
        new SeriesPicture.Axis(title, 0, y.length),
        new SeriesPicture.Axis("Mass, kg", -1, 10),
        SeriesPicture.Band.NONE,
        List.of(),
        List.of(),
        List.of());
  }

  private static String saved(Picture picture) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PictureFile.svg(picture, 800, 400, Ink.light(13), out);
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void savedDrawingsAreTheSameEveryTime() throws Exception {
    String svg = saved(series("Turn"));
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      assertThat(saved(series("Turn"))).isEqualTo(svg);
    } finally {
      Locale.setDefault(before);
    }
    assertThat(svg).startsWith("<svg").endsWith("</svg>");
    assertThat(texts(svg)).contains("Turn", "Mass, kg");
  }

  @Test
  void isAsLargeAsAskedAndCanBeEnlarged() throws Exception {
    Element root = read(saved(series("Turn"))).getDocumentElement();
    assertThat(root.getAttribute("width")).isEqualTo("800");
    assertThat(root.getAttribute("height")).isEqualTo("400");
    assertThat(root.getAttribute("viewBox")).isEqualTo("0 0 800 400");
  }

  @Test
  void hostileTextStaysText() throws Exception {
    String hostile = "</text><script>alert(1)</script> &amp; ]]> \"'<!-- <![CDATA[ ";
    String svg = saved(series(hostile));
    assertThat(texts(svg)).contains(hostile);
    assertThat(all(read(svg), "script")).isEmpty();
  }

  @Test
  void whatMayNotStandInADocumentIsReplaced() throws Exception {
    String svg = drawn(g -> g.drawString("a\u0000b\u0001c\ud800d\ufffee\u001bf 中😀é\u200f", 5, 20));
    assertThat(texts(svg)).containsExactly("a\ufffdb\ufffdc\ufffdd\ufffde\ufffdf 中😀é\u200f");
  }

  @Test
  void namesNothingThatLiesElsewhere() throws Exception {
    String svg = saved(series("Turn"));
    assertThat(svg).doesNotContain("<!DOCTYPE").doesNotContain("<?").doesNotContain("href");
    // the only addresses are the names of the two vocabularies, which nobody fetches
    assertThat(
            svg.replace("xmlns=\"http://www.w3.org/2000/svg\"", "")
                .replace("xmlns:xlink=\"http://www.w3.org/1999/xlink\"", ""))
        .doesNotContain("http:")
        .doesNotContain("https:")
        .doesNotContain("file:");
  }

  @Test
  void shapesStandWhereTheyWereDrawn() throws Exception {
    String svg =
        drawn(
            g -> {
              g.setColor(new Color(10, 20, 30, 51));
              g.fill(new Rectangle2D.Double(1.5, 2.25, 30, 40));
              Path2D path = new Path2D.Double();
              path.moveTo(1, 2);
              path.lineTo(3, 4);
              g.setStroke(new BasicStroke(2.5f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
              g.translate(100, 50);
              g.draw(path);
            });
    Document read = read(svg);
    Element rectangle = all(read, "rect").get(0);
    assertThat(
            List.of(
                rectangle.getAttribute("x"),
                rectangle.getAttribute("y"),
                rectangle.getAttribute("width"),
                rectangle.getAttribute("height"),
                given(rectangle, "fill")))
        .containsExactly("1.5", "2.25", "30", "40", "rgb(10,20,30)");
    assertThat(Double.parseDouble(given(rectangle, "fill-opacity"))).isEqualTo(0.2);
    Element line =
        all(read, "path").stream()
            .filter(each -> each.getAttribute("d").equals("M1 2 L3 4"))
            .findFirst()
            .orElseThrow();
    assertThat(given(line, "stroke-width")).isEqualTo("2.5");
    assertThat(given(line, "stroke-linecap")).isEqualTo("round");
    assertThat(given(line, "transform")).isEqualTo("translate(100,50)");
  }

  @Test
  void lettersKeepTheirFontAndPlace() throws Exception {
    String svg =
        drawn(
            g -> {
              g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 14));
              g.drawString("mold 7", 12.5f, 34.25f);
            });
    Element text = all(read(svg), "text").get(0);
    assertThat(
            List.of(
                text.getAttribute("x"),
                text.getAttribute("y"),
                given(text, "font-size"),
                given(text, "font-weight"),
                given(text, "font-family")))
        .containsExactly("12.5", "34.25", "14px", "bold", "sans-serif");
  }
}
