namespace Heaveline.Answers;

/// <summary>The sources of the methods, by key. How each is known follows docs/theory and docs/validation.md.</summary>
public static class Sources
{
    private const string SecondHand = "after public transcriptions that agree (docs/validation.md names them); the standard itself was not used";
    private const string Own = "derived in docs/theory and tested; no published source";

    /// <summary>Axes and signs.</summary>
    public static Source Axes { get; } = new(
        "iso8855",
        "ISO 8855, Road vehicles: vehicle dynamics and road-holding ability, vocabulary",
        "axes and signs: x forward, y left, z up, pitch nose-down positive",
        "read in an instrument's manual that quotes it");

    /// <summary>Wheel rate, ride rate and their words.</summary>
    public static Source Terms { get; } = new(
        "terms",
        "Terms of the trade, explained in this program's docs/glossary.md; cf. SAE J670, Vehicle Dynamics Terminology",
        "wheel rate, ride rate and their words",
        "common use; the wording of the standard was not read");

    /// <summary>Axle frequencies, body modes, dynamic index.</summary>
    public static Source Modes { get; } = new(
        "gillespie-5",
        "Gillespie, Fundamentals of Vehicle Dynamics, chapter 5",
        "ride frequencies, bounce and pitch modes with their centres, the wheelbase filter",
        "derived in docs/theory/model.md and recomputed apart from this program; the textbook stands for the method's name");

    /// <summary>Stepping of the equations of motion.</summary>
    public static Source Steps { get; } = new(
        "hairer-i",
        "Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I",
        "fixed steps of the fourth-order Adams–Bashforth formula",
        "coefficients read in several programs; checked against SciPy's DOP853");

    /// <summary>The car identified from a drive.</summary>
    public static Source Identification { get; } = new(
        "identification",
        "This program's docs/theory/identification.md; Whittle, The analysis of multiple stationary time series, J. R. Stat. Soc. B 15 (1953) 125; "
        + "White, Maximum likelihood estimation of misspecified models, Econometrica 50 (1982) 1",
        "likelihood of spectra over unknown humps, information and sandwich",
        "derived and tested on planted drives; the papers stand for the methods' names, from memory");

    /// <summary>Hit and settling.</summary>
    public static Source Parts { get; } = new(
        "hit-settling", "This program's docs/theory/measures.md", "hit and settling of a bump, late pitch, pitch share, motion at the head", Own);

    /// <summary>Vibration and people.</summary>
    public static Source Comfort { get; } = new(
        "iso2631-1",
        "ISO 2631-1:1997, tables 1 to 3, clauses 6 to 8, annexes B and C",
        "frequency weightings, the axes that take them and what is counted of vertical and pitch",
        SecondHand);

    /// <summary>Weighting filters.</summary>
    public static Source Weightings { get; } =
        new("iso8041-1", "ISO 8041-1:2017, table 3 and annex B", "parameters of the weighting filters", SecondHand);

    /// <summary>Road classes.</summary>
    public static Source RoadClasses { get; } = new("iso8608", "ISO 8608:2016, table C.2", "spectra and classes of random roads", SecondHand);

    /// <summary>Curved elements on a random road.</summary>
    public static Source Linearisation { get; } = new(
        "roberts-spanos",
        "Booton 1953, Kazakov and Caughey, after reviews; Roberts and Spanos, Random Vibration and Statistical Linearization, 1990",
        "dampers and stops on a random road",
        "derived (Gaussian integration by parts) and checked against passes in time; of the books the reviews were read");

    /// <summary>Doubts carried through.</summary>
    public static Source Doubts { get; } = new("jcgm-100", "JCGM 100:2008 (GUM), clause 5", "doubts carried through by slopes", "cited by its title");

    /// <summary>Doubts carried through by drawing cars.</summary>
    public static Source Draws { get; } = new(
        "jcgm-101",
        "JCGM 101:2008, propagation of distributions by a Monte Carlo method",
        "doubts carried through by drawing cars",
        "cited by its title");

    /// <summary>Fair shares of causes.</summary>
    public static Source Shares { get; } = new(
        "shapley",
        "Shapley, A value for n-person games, Contributions to the Theory of Games II, 1953, 307–317",
        "fair shares of causes that work together",
        "citation read; derived and tested");

    /// <summary>Closed forms of the rule.</summary>
    public static Source Rule { get; } = new(
        "ratio-rule", "This program's docs/guide/which-spring-first.md", "1 + 0.6 L f/V and the ends in step: read off our own runs",
        Own
        + "; that such a rule holds near one speed only, Crolla and King (16th IAVSD symposium) and Odhams and Cebon 2006 say too (abstracts read)");

    /// <summary>Side effects.</summary>
    public static Source SideEffects { get; } = new(
        "side-effects", "This program's docs/theory/side-effects.md", "roll and pitch per g, heights, travel left, spring stress, beam", Own);

    /// <summary>Before and after.</summary>
    public static Source Covariance { get; } = new(
        "draper-smith",
        "Draper and Smith, Applied Regression Analysis, 3rd edition, chapters 1, 8 and 14",
        "passes before and after compared with speed beside the change: least squares, Student's t, analysis of covariance",
        "cited by its title; checked against NIST's reference data sets and printed examples (docs/validation.md)");

    /// <summary>All of them, in the order in which a report lists them.</summary>
    public static IReadOnlyList<Source> All { get; } =
    [
        Axes, Terms, Modes, Steps, Parts, Comfort, Weightings, RoadClasses, Linearisation, Doubts, Draws, Shares, Rule, SideEffects, Covariance,
        Identification,
    ];
}
