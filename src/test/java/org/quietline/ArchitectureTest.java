package org.quietline;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import org.quietline.stats.Interval;
import org.quietline.stats.control.ControlLimits;

/** Pins the table of packages in DEVELOPERS.md: who may use whom, and who may see which library. */
@AnalyzeClasses(packages = "org.quietline", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  private static final String[] ORDINARY_JAVA = {
    "java.lang..", "java.math..", "java.time..", "java.util..", "org.jspecify.."
  };

  @ArchTest static final ArchRule bench_uses_nothing = mayUse("..bench", only("..bench"));

  @ArchTest
  static final ArchRule stats_is_pure_numerics =
      mayUse(
          "..stats..",
          only(
              "..stats..",
              "org.apache.commons.math3..",
              "org.apache.commons.numbers..",
              "org.apache.commons.statistics.."));

  @ArchTest
  static final ArchRule only_stats_sees_its_tools =
      classes()
          .that()
          .resideInAPackage("..stats.numeric")
          .should()
          .onlyBeAccessed()
          .byAnyPackage("..stats..");

  @ArchTest
  static final ArchRule intake_uses_bench_and_parsers =
      mayUse(
          "..intake",
          only(
              "..intake",
              "..bench",
              "java.io..",
              "java.nio..",
              "java.security..",
              "com.fasterxml.jackson.."));

  @ArchTest
  static final ArchRule a_look_at_a_file_reads_by_way_of_intake =
      mayUse(
          "..intake.peek", only("..intake.peek", "..intake", "..bench", "java.io..", "java.nio.."));

  @ArchTest
  static final ArchRule assess_uses_bench_and_stats =
      mayUse("..assess", only("..assess", "..bench", "..stats.."));

  @ArchTest
  static final ArchRule report_words_what_assess_found =
      mayUse(
          "..report",
          only(
                  "..report",
                  "..assess",
                  "..bench",
                  "java.io..",
                  "java.nio.charset..",
                  "org.apache.commons.csv..",
                  "com.fasterxml.jackson.core..")
              .or(belongToAnyOf(Interval.class, ControlLimits.class, ControlLimits.Basis.class)));

  @ArchTest
  static final ArchRule charts_see_the_chart_library =
      mayUse(
          "..report.chart",
          only("..report.chart", "..report", "java.io..", "java.awt..", "org.jfree.."));

  @ArchTest
  static final ArchRule pdf_sees_the_pdf_library =
      mayUse(
          "..report.pdf",
          only(
              "..report.pdf",
              "..report",
              "..report.chart",
              "java.io..",
              "java.nio..",
              "java.awt..",
              "java.security..",
              "com.lowagie.."));

  @ArchTest
  static final ArchRule only_commands_touch_the_process =
      noClasses()
          .that(not(resideInAPackage("..cli")))
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .callMethod(System.class, "exit", int.class)
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(java.time.LocalDate.class, "now")
          .orShould()
          .callMethod(java.time.LocalDateTime.class, "now")
          .orShould()
          .callMethod(java.time.Instant.class, "now");

  @ArchTest
  static final ArchRule no_package_is_a_drawer_for_odds_and_ends =
      noClasses().should().resideInAnyPackage("..util..", "..impl..", "..common..", "..helper..");

  @ArchTest
  static final ArchRule packages_have_no_circles =
      slices().matching("org.quietline.(**)").should().beFreeOfCycles();

  private static DescribedPredicate<JavaClass> only(String... packages) {
    return resideInAnyPackage(packages).or(resideInAnyPackage(ORDINARY_JAVA));
  }

  private static ArchRule mayUse(String room, DescribedPredicate<JavaClass> allowed) {
    DescribedPredicate<JavaClass> plain =
        DescribedPredicate.describe(
            "is a primitive or an array of what is allowed",
            c -> c.isPrimitive() || (c.isArray() && isAllowed(c.getBaseComponentType(), allowed)));
    return classes()
        .that()
        .resideInAPackage(room)
        .should()
        .onlyDependOnClassesThat(allowed.or(plain));
  }

  private static boolean isAllowed(JavaClass type, DescribedPredicate<JavaClass> allowed) {
    return type.isPrimitive() || allowed.test(type);
  }
}
