package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.io.StringReader;
import java.util.Set;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Reads a page, which is well-formed XML as our templates are, and adds what only paper needs. */
final class PaperPage {
    /** Stands for what the fonts lack, and for what is written from right to left, which would come out reversed. */
    static final String UNKNOWN = "\uFFFD";

    /** Of a truck's id and of a site's name, as many characters as the foot of a page has room for, however wide they are. */
    static final int LONGEST_ID = 24;

    static final int LONGEST_SITE = 40;

    private static final Set<String> HEADINGS = Set.of("h2", "h3");

    private PaperPage() {}

    static Document of(String page) throws IOException {
        Document document = parsed(settable(page));
        describePictures(document.getElementsByTagName("svg"));
        Element contents = document.createElement("bookmarks");
        list(document.getDocumentElement(), contents);
        document.getElementsByTagName("head").item(0).appendChild(contents);
        return document;
    }

    private static String settable(String page) {
        StringBuilder settable = new StringBuilder(page.length());
        page.codePoints().forEach(c -> {
            if (isSettable(c)) {
                settable.appendCodePoint(c);
            } else {
                settable.append(UNKNOWN);
            }
        });
        return settable.toString();
    }

    private static boolean isSettable(int codePoint) {
        return switch (Character.getDirectionality(codePoint)) {
            case Character.DIRECTIONALITY_RIGHT_TO_LEFT, Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC -> false;
            // What isn't assigned may be no character of XML.
            default -> Character.isDefined(codePoint);
        };
    }

    private static Document parsed(String page) throws IOException {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_DTD, "");
            factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
            DocumentBuilder builder = factory.newDocumentBuilder();
            // Otherwise it prints what it also throws.
            builder.setErrorHandler(null);
            return builder.parse(new InputSource(new StringReader(page)));
        } catch (ParserConfigurationException | SAXException e) {
            throw new IOException("the page isn't well-formed: " + e.getMessage(), e);
        }
    }

    private static void describePictures(NodeList pictures) {
        for (int i = 0; i < pictures.getLength(); i++) {
            Element picture = (Element) pictures.item(i);
            picture.setAttribute("alt", picture.getAttribute("aria-label"));
        }
    }

    /** The list of contents beside the pages: sections and trucks. */
    private static void list(Element inside, Element contents) {
        for (Node node = inside.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element) {
                switch (element.getTagName()) {
                    case "article" -> entry(element, contents);
                    case "section" -> list(element, entry(element, contents));
                    default -> list(element, contents);
                }
            }
        }
    }

    private static Element entry(Element place, Element contents) {
        if (!place.hasAttribute("id")) {
            place.setAttribute("id", "part-" + contents.getChildNodes().getLength());
        }
        Element entry = contents.getOwnerDocument().createElement("bookmark");
        entry.setAttribute("name", heading(place));
        entry.setAttribute("href", "#" + place.getAttribute("id"));
        contents.appendChild(entry);
        return entry;
    }

    private static String heading(Element place) {
        NodeList inside = place.getElementsByTagName("*");
        for (int i = 0; i < inside.getLength(); i++) {
            if (HEADINGS.contains(inside.item(i).getNodeName())) {
                return inside.item(i).getTextContent();
            }
        }
        return "";
    }
}
