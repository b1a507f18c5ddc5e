package org.gritwright.examples.fleetday;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.plan.FleetPlanner;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** Somebody who types a day's worksheets into the page. */
final class Typist {
    private static final List<String> CHOICES =
            List.of("scale", "container", "moistureBasis", "primed", "coasting", "held");
    private static final int WAITS = 1000;
    private static final int WAIT_MILLIS = 10;

    private final Browser browser;
    private final Path folder;

    private Typist(Browser browser, Path folder) {
        this.browser = browser;
        this.folder = folder;
    }

    static FleetDay read(String document) throws IOException, RejectedDocumentException {
        return Document.FLEET_DAY.read(new ByteArrayInputStream(document.getBytes(StandardCharsets.UTF_8)));
    }

    /** A document as the library writes it, line by line. */
    static List<String> canonical(String document) throws IOException, RejectedDocumentException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Document.FLEET_DAY.write(read(document), out);
        return out.toString(StandardCharsets.UTF_8).lines().toList();
    }

    static String page(String document) throws IOException, RejectedDocumentException {
        FleetDay day = read(document);
        return TypeInPage.html(new DayPlan(
                day,
                FleetPlanner.of(BuiltInTypes.registry()).plan(day, day.plan().orElseThrow())));
    }

    /** Opens the page of a day. */
    static Typist of(Browser browser, Path folder, String document) throws IOException, RejectedDocumentException {
        Typist typist = new Typist(browser, folder);
        browser.goTo(Files.writeString(folder.resolve("type-in.html"), page(document)));
        return typist;
    }

    Typist truck(String id) {
        List<WebElement> trucks = browser.driver().findElements(By.cssSelector("#trucks button"));
        trucks.stream()
                .filter(one -> one.findElement(By.tagName("b")).getText().equals(id))
                .findFirst()
                .orElseThrow()
                .sendKeys(Keys.ENTER);
        return this;
    }

    WebElement box(String key) {
        return browser.driver().findElement(By.id(key));
    }

    boolean has(String key) {
        return !browser.driver().findElements(By.id(key)).isEmpty();
    }

    /** Types a text in place of what stands in a box, and leaves the box. */
    Typist type(String key, String text) {
        WebElement box = box(key);
        if (CHOICES.contains(key.replaceFirst(".*/", ""))) {
            box.findElement(By.cssSelector("option[value='" + text + "']")).click();
            // Another scale has other units: then the page shows the truck anew.
            box(key).sendKeys(Keys.TAB);
        } else {
            box.sendKeys(Keys.chord(Keys.CONTROL, "a"), text.isEmpty() ? Keys.DELETE : text, Keys.TAB);
        }
        return this;
    }

    /** Types several boxes of the truck that is shown, in this order. */
    Typist boxes(Map<String, String> texts) {
        texts.forEach(this::type);
        return this;
    }

    /** The unit beside a box, or nothing. */
    String unit(String key) {
        List<WebElement> units = box(key).findElements(By.xpath("following-sibling::span[@class='unit']"));
        return units.isEmpty() ? "" : units.get(0).getText();
    }

    Typist press(String id) {
        box(id).sendKeys(Keys.ENTER);
        return this;
    }

    /** What the page says beside a box, and below its part. */
    String said(String key) {
        String group = key.replaceFirst("/.*", "");
        return box("note-" + key).getText() + "\n" + notes(group);
    }

    String notes(String group) {
        return box("notes-" + group).getText();
    }

    String text(String id) {
        return box(id).getText();
    }

    void yes(String group, String remark) {
        for (WebElement item : box("notes-" + group).findElements(By.cssSelector("li.remark"))) {
            if (item.getText().contains(remark)) {
                item.findElement(By.tagName("input")).sendKeys(Keys.SPACE);
                return;
            }
        }
        throw new AssertionError("no remark \"" + remark + "\" in " + notes(group));
    }

    /** The file that a button saves. */
    String file(String button) throws IOException, InterruptedException {
        Path downloads = Files.createTempDirectory(folder, "saved");
        browser.driver()
                .executeCdpCommand(
                        "Browser.setDownloadBehavior",
                        Map.of("behavior", "allow", "downloadPath", downloads.toString()));
        press(button);
        for (int i = 0; i < WAITS; i++) {
            try (Stream<Path> files = Files.list(downloads)) {
                // The browser holds the name with an empty file until all is there.
                Optional<Path> whole = files.filter(one ->
                                one.toString().endsWith(".json") && one.toFile().length() > 0)
                        .findFirst();
                if (whole.isPresent()) {
                    return Files.readString(whole.get());
                }
            }
            Thread.sleep(WAIT_MILLIS);
        }
        throw new AssertionError("nothing was saved: " + text("said"));
    }
}
