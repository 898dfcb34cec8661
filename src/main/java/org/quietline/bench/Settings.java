package org.quietline.bench;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * What a bench set down about itself in {@code bench.toml}.
 *
 * @param name the bench's name, as printed on each page
 * @param timezone the time zone of all local times
 * @param methods the test methods it runs
 * @param instruments its instruments
 * @param materials its control materials
 * @param people the people who test, review and release; may be empty
 * @param baselines baselines chosen by a person; may be empty
 * @param chart how control charts are made
 * @param outlook what it asks of its calibrations
 * @param release how it decides whether a batch may go
 * @param checksOff checks that a person switched off; may be empty
 */
public record Settings(
    String name,
    ZoneId timezone,
    List<Method> methods,
    List<Instrument> instruments,
    List<Material> materials,
    List<Person> people,
    List<BaselineChoice> baselines,
    ChartSettings chart,
    OutlookSettings outlook,
    ReleaseSettings release,
    List<CheckOff> checksOff) {

  /** Copies the lists. */
  public Settings {
    Checks.text("name", name);
    methods = List.copyOf(methods);
    instruments = List.copyOf(instruments);
    materials = List.copyOf(materials);
    people = List.copyOf(people);
    baselines = List.copyOf(baselines);
    checksOff = List.copyOf(checksOff);
  }

  /**
   * Whether a check is asked of a method.
   *
   * @param check the check
   * @param method the method's key
   * @return false when it is switched off for the method or for the whole bench
   */
  public boolean isOn(Check check, String method) {
    return checksOff.stream()
        .noneMatch(
            off -> off.check() == check && off.method().map(m -> m.equals(method)).orElse(true));
  }

  /**
   * Finds a control material of a method.
   *
   * @param method the method's key
   * @param key the material's key
   * @return the material, if the bench keeps it for that method
   */
  public Optional<Material> material(String method, String key) {
    return materials.stream()
        .filter(m -> m.key().equals(key) && m.method().equals(method))
        .findFirst();
  }
}
