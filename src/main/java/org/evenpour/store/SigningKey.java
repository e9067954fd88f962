package org.evenpour.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.evenpour.casting.FileException;
import org.evenpour.words.Remark;

/**
 * A key by which a person signs lines: Ed25519 (RFC 8032), in the text form of RFC 7468, private
 * and public key in one file. Whoever checks needs the public ones only.
 *
 * @param own the private key
 * @param signer the public key, as lines carry it: X.509 in Base64
 */
public record SigningKey(PrivateKey own, String signer) {
  private static final String KIND = "Ed25519";
  private static final Pattern BLOCK =
      Pattern.compile("-----BEGIN (PRIVATE|PUBLIC) KEY-----([A-Za-z0-9+/=\\s]+)-----END");

  /**
   * Makes a key, and beside it {@code .pub} with the public one.
   *
   * @param file only its owner may read it, where the disk knows owners
   * @return the file with the public key
   */
  public static Path make(Path file) throws IOException {
    Path open = file.resolveSibling(file.getFileName() + ".pub");
    for (Path one : List.of(file, open)) {
      if (Files.exists(one)) {
        throw new FileAlreadyExistsException(
            one.toString(), null, "there is such a file already, and no key is written over");
      }
    }
    try {
      KeyPair pair = KeyPairGenerator.getInstance(KIND).generateKeyPair();
      String publicKey = block("PUBLIC", pair.getPublic().getEncoded());
      boolean hasOwners = file.getFileSystem().supportedFileAttributeViews().contains("posix");
      FileAttribute<?>[] ownersOnly =
          hasOwners
              ? new FileAttribute<?>[] {
                PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
              }
              : new FileAttribute<?>[0];
      Files.createFile(file, ownersOnly);
      Files.writeString(file, block("PRIVATE", pair.getPrivate().getEncoded()) + publicKey);
      Files.writeString(open, publicKey, StandardOpenOption.CREATE_NEW);
      return open;
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java has " + KIND, e);
    }
  }

  private static String block(String kind, byte[] key) {
    return "-----BEGIN "
        + kind
        + " KEY-----\n"
        + Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(key)
        + "\n-----END "
        + kind
        + " KEY-----\n";
  }

  /**
   * Reads a key to sign with.
   *
   * @throws IOException if there is none in the file: says what mends it
   */
  public static SigningKey read(Path file) throws IOException {
    List<String> mine = blocks(file, "PRIVATE");
    List<String> open = blocks(file, "PUBLIC");
    if (mine.size() != 1 || open.size() != 1) {
      throw new FileException(Remark.of("at.file", file, Remark.of("chain.key")));
    }
    try {
      return new SigningKey(
          KeyFactory.getInstance(KIND)
              .generatePrivate(new PKCS8EncodedKeySpec(Base64.getDecoder().decode(mine.get(0)))),
          open.get(0));
    } catch (GeneralSecurityException | IllegalArgumentException e) {
      throw new FileException(Remark.of("at.file", file, Remark.of("chain.key")), e);
    }
  }

  /** The public keys of a file. */
  public static List<String> signers(Path file) throws IOException {
    List<String> all = blocks(file, "PUBLIC");
    if (all.isEmpty()) {
      throw new FileException(Remark.of("at.file", file, Remark.of("chain.key")));
    }
    return all;
  }

  private static List<String> blocks(Path file, String kind) throws IOException {
    Matcher block = BLOCK.matcher(Files.readString(file));
    List<String> all = new ArrayList<>();
    while (block.find()) {
      if (block.group(1).equals(kind)) {
        all.add(block.group(2).replaceAll("\\s", ""));
      }
    }
    return all;
  }

  /** Signs a text; in Base64. */
  String signature(String text) {
    try {
      Signature signing = Signature.getInstance(KIND);
      signing.initSign(own);
      signing.update(text.getBytes(StandardCharsets.UTF_8));
      return Base64.getEncoder().encodeToString(signing.sign());
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("a key that was read can sign", e);
    }
  }

  /** Whether a signature is that of a text by a signer. */
  static boolean isSigned(String text, String signer, String signature) {
    try {
      Signature checking = Signature.getInstance(KIND);
      checking.initVerify(
          KeyFactory.getInstance(KIND)
              .generatePublic(new X509EncodedKeySpec(Base64.getDecoder().decode(signer))));
      checking.update(text.getBytes(StandardCharsets.UTF_8));
      return checking.verify(Base64.getDecoder().decode(signature));
    } catch (GeneralSecurityException | IllegalArgumentException e) {
      return false;
    }
  }
}
