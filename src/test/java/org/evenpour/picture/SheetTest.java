package org.evenpour.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.InflaterInputStream;
import org.evenpour.picture.Sheet.Item;
import org.junit.jupiter.api.Test;

class SheetTest {
  private static Sheet sheet(int works) {
    List<Item> items = new ArrayList<>();
    items.add(Item.heading("To level"));
    for (int i = 0; i < works; i++) {
      items.add(new Item("Mold " + i, "serial K" + i, "Its wedge is wide. ".repeat(8), true));
    }
    return new Sheet("Molds", "a week", "Check first that the mold is dry.", items, "Done:", "end");
  }

  @Test
  void workThatDoesNotFitGoesOnToTheNextPageAndNothingIsPrintedIntoTheFooter() {
    assertThat(sheet(1).pages()).hasSize(1);
    List<Picture> pages = sheet(30).pages();
    assertThat(pages.size()).isBetween(3, 6);
    for (Picture page : pages) {
      BufferedImage image = PictureFile.image(page, Sheet.WIDTH + 32, Sheet.HEIGHT + 32, 1, INK);
      // Between the last line of work and the rule over the footer there is nothing.
      int ruled = 16 + Sheet.HEIGHT - 36 + 8 - 14;
      for (int y = ruled - 6; y < ruled - 1; y++) {
        for (int x = 0; x < image.getWidth(); x++) {
          assertThat(image.getRGB(x, y)).isEqualTo(INK.field().getRGB());
        }
      }
    }
  }

  private static final Ink INK = Ink.light(10);

  /** ISO 32000-1, 7.5: header, objects, a table of where each begins, a trailer that names it. */
  @Test
  void theDocumentIsWhatItsStandardAsksFor() throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PaperFile.write(sheet(12).pages(), Sheet.WIDTH, Sheet.HEIGHT, INK, bytes);
    String file = bytes.toString(StandardCharsets.ISO_8859_1);
    assertThat(file).startsWith("%PDF-1.4\n").endsWith("%%EOF\n");
    Matcher start = Pattern.compile("startxref\n(\\d+)\n").matcher(file);
    assertThat(start.find()).isTrue();
    String table = file.substring(Integer.parseInt(start.group(1)));
    assertThat(table).startsWith("xref\n0 ");
    Matcher entry = Pattern.compile("(\\d{10}) 00000 n \n").matcher(table);
    int number = 0;
    while (entry.find()) {
      assertThat(file.substring(Integer.parseInt(entry.group(1))))
          .startsWith(++number + " 0 obj\n");
    }
    int pages = sheet(12).pages().size();
    assertThat(number).isEqualTo(2 + 3 * pages);
    assertThat(file.split("/Type /Page /", -1)).hasSize(pages + 1);
    Matcher image =
        Pattern.compile("/Length (\\d+) .*/Width (\\d+) /Height (\\d+) .*\nstream\n").matcher(file);
    assertThat(image.find()).isTrue();
    byte[] packed =
        file.substring(image.end(), image.end() + Integer.parseInt(image.group(1)))
            .getBytes(StandardCharsets.ISO_8859_1);
    try (var unpacked = new InflaterInputStream(new ByteArrayInputStream(packed))) {
      assertThat(unpacked.readAllBytes())
          .hasSize(Integer.parseInt(image.group(2)) * Integer.parseInt(image.group(3)));
    }
  }
}
