package org.evenpour.picture;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * A drawing of lines and letters (SVG 1.1), made by drawing on its pen.
 *
 * <p>Nothing is read to make it and nothing need be read to show it: it names no document type and
 * nothing that lies elsewhere. Its letters stay letters.
 */
final class Drawing {
  private static final String SVG = "http://www.w3.org/2000/svg";

  /** What is kept of a coordinate: a thousandth of a pixel, a choice. */
  private static final int DECIMALS = 3;

  private final SVGGraphics2D pen;
  private final int width;
  private final int height;

  Drawing(int width, int height) {
    this.width = width;
    this.height = height;
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(blank());
    context.setComment(null);
    context.setPrecision(DECIMALS);
    pen = new SVGGraphics2D(context, false);
    pen.setSVGCanvasSize(new Dimension(width, height));
  }

  private static Document blank() {
    try {
      return DocumentBuilderFactory.newDefaultNSInstance()
          .newDocumentBuilder()
          .getDOMImplementation()
          .createDocument(SVG, "svg", null);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("the runtime makes no documents", e);
    }
  }

  Graphics2D pen() {
    return pen;
  }

  /** Writes what was drawn, in UTF-8; the pen is used up. */
  void write(OutputStream out) throws IOException {
    Element root = pen.getRoot();
    root.setAttributeNS(null, "viewBox", "0 0 " + width + " " + height);
    clean(root);
    StringWriter text = new StringWriter();
    try {
      // not by the pen's own stream(): that names a document type that a reader may fetch
      Transformer asItIs = TransformerFactory.newDefaultInstance().newTransformer();
      asItIs.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
      asItIs.transform(new DOMSource(root), new StreamResult(text));
    } catch (TransformerException e) {
      throw new IOException(e);
    }
    out.write(text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** Texts come from logs, where anything may stand. */
  private static void clean(Node node) {
    if (node.getNodeType() == Node.TEXT_NODE) {
      node.setNodeValue(readable(node.getNodeValue()));
    }
    for (Node at = node.getFirstChild(); at != null; at = at.getNextSibling()) {
      clean(at);
    }
  }

  /**
   * The text with U+FFFD for what may not stand in a document at all, escaped or not (XML 1.0,
   * production 2, Char): controls, halves of surrogate pairs.
   */
  static String readable(String text) {
    StringBuilder readable = new StringBuilder(text.length());
    text.codePoints()
        .map(
            c ->
                c == '\t'
                        || c == '\n'
                        || c == '\r'
                        || (c >= 0x20 && c < 0xD800)
                        || (c > 0xDFFF && c < 0xFFFE)
                        || c > 0xFFFF
                    ? c
                    : 0xFFFD)
        .forEach(readable::appendCodePoint);
    return readable.toString();
  }
}
