package org.quietline.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.quietline.assess.Answer;

/** Writes named fields, and what cannot be said as {@code null} with its note. */
final class JsonFields {
  private final JsonGenerator generator;

  JsonFields(JsonGenerator generator) {
    this.generator = generator;
  }

  /** Writes the fields of one value. */
  interface Body<T> {
    void write(T value) throws IOException;
  }

  void startObject() throws IOException {
    generator.writeStartObject();
  }

  void startObject(String name) throws IOException {
    generator.writeObjectFieldStart(name);
  }

  void endObject() throws IOException {
    generator.writeEndObject();
  }

  void number(String name, long value) throws IOException {
    generator.writeNumberField(name, value);
  }

  /** A number that came out infinite or undefined would be a false statement, so it is refused. */
  void number(String name, double value) throws IOException {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " is " + value);
    }
    generator.writeNumberField(name, value);
  }

  void numberOr(String name, OptionalDouble value, String note) throws IOException {
    if (value.isPresent()) {
      number(name, value.getAsDouble());
    } else {
      nothing(name, note);
    }
  }

  void decimalOr(String name, Optional<BigDecimal> value, String note) throws IOException {
    if (value.isPresent()) {
      generator.writeNumberField(name, value.get());
    } else {
      nothing(name, note);
    }
  }

  void truth(String name, boolean value) throws IOException {
    generator.writeBooleanField(name, value);
  }

  void text(String name, Object value) throws IOException {
    generator.writeStringField(name, value.toString());
  }

  void textOr(String name, Optional<?> value, String note) throws IOException {
    if (value.isPresent()) {
      text(name, value.get());
    } else {
      nothing(name, note);
    }
  }

  void nothing(String name, String note) throws IOException {
    generator.writeNullField(name);
    generator.writeStringField(name + "Note", note);
  }

  void answer(String name, Answer<Double> answer) throws IOException {
    if (answer.value().isPresent()) {
      number(name, answer.value().get());
    } else {
      nothing(name, answer.why().orElseThrow());
    }
  }

  void answerText(String name, Answer<?> answer) throws IOException {
    if (answer.value().isPresent()) {
      text(name, answer.value().get());
    } else {
      nothing(name, answer.why().orElseThrow());
    }
  }

  <T> void object(String name, Answer<T> answer, Body<T> body) throws IOException {
    if (answer.value().isPresent()) {
      startObject(name);
      body.write(answer.value().get());
      endObject();
    } else {
      nothing(name, answer.why().orElseThrow());
    }
  }

  void texts(String name, List<?> values) throws IOException {
    generator.writeArrayFieldStart(name);
    for (Object value : values) {
      generator.writeString(value.toString());
    }
    generator.writeEndArray();
  }

  <T> void array(String name, List<T> values, Body<T> body) throws IOException {
    generator.writeArrayFieldStart(name);
    for (T value : values) {
      startObject();
      body.write(value);
      endObject();
    }
    generator.writeEndArray();
  }
}
