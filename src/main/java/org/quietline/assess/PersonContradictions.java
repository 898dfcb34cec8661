package org.quietline.assess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.quietline.assess.Contradiction.PersonDoubted;
import org.quietline.bench.Check;
import org.quietline.bench.Person;
import org.quietline.bench.QuestionId;
import org.quietline.bench.Result;

/**
 * Were results made by people who are listed and may test? Asked only where the bench lists people;
 * a person without any duty is taken as one whose duties are not written down.
 */
final class PersonContradictions {
  private static final String TEST = "test";

  private PersonContradictions() {}

  static List<Contradiction> ask(Asking asking) {
    List<Person> people = asking.bench().settings().people();
    if (people.isEmpty()) {
      return List.of();
    }
    List<Result> named =
        asking.bench().results().stream().filter(r -> r.operator().isPresent()).toList();
    List<Contradiction> found = new ArrayList<>();
    Asking.by(r -> r.method() + "/" + r.operator().orElseThrow(), named)
        .forEach(
            (name, results) -> {
              String operator = results.get(0).operator().orElseThrow();
              Optional<Person> person =
                  people.stream().filter(p -> p.key().equals(operator)).findFirst();
              Check check = person.isEmpty() ? Check.PERSON_NOT_LISTED : Check.PERSON_NOT_ENTITLED;
              List<Result> doubted = results.stream().filter(r -> !mayTest(person, r)).toList();
              if (asking.isOn(check, results.get(0).method())) {
                found.addAll(
                    asking.aboutMany(
                        new QuestionId(name, check),
                        doubted,
                        (asked, some) -> new PersonDoubted(asked, operator, person, some)));
              }
            });
    return found;
  }

  private static boolean mayTest(Optional<Person> person, Result result) {
    return person
        .filter(p -> p.may().isEmpty() || p.may().contains(TEST))
        .filter(p -> p.from().filter(result.takenAt().toLocalDate()::isBefore).isEmpty())
        .isPresent();
  }
}
