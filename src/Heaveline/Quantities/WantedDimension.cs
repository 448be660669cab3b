namespace Heaveline.Quantities;

/// <summary>The dimension that a text should have, as a value, so that the reading is compiled once and not once for each dimension.</summary>
internal sealed record WantedDimension(Exponents Exponents, string Name, string Usual)
{
    /// <summary>The wanted dimension of a dimension type.</summary>
    public static WantedDimension Of<TDimension>()
        where TDimension : struct, IDimension => new(TDimension.Exponents, TDimension.Name, TDimension.Usual);

    /// <summary>The likely unit, in which the example of a wish stands.</summary>
    public string Likely { get; init; } = Usual;

    /// <summary>Whether a number without unit is wanted.</summary>
    public bool IsPlain => Exponents == default;

    /// <summary>"a spring rate is wanted, e.g. 20 N/mm".</summary>
    public string Wish(string number) => $"{KnownDimensions.WithArticle(Name)} is wanted, e.g. {$"{number} {Likely}".TrimEnd()}";

    /// <summary>The wish after another dimension was found: a weight is turned into the mass it is of, anything else keeps its number.</summary>
    /// <param name="digits">The number as written.</param>
    /// <param name="found">What was found.</param>
    /// <param name="si">The value found, in SI units.</param>
    public string WishAgainst(string digits, Exponents found, double si)
    {
        if (Is<Mass>(Exponents) && Is<Force>(found))
        {
            return Wish(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{si / StandardGravity:G4}"));
        }

        return Is<Force>(Exponents) && Is<Mass>(found)
            ? Wish(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{si * StandardGravity:G4}"))
            : Wish(digits);
    }

    // Standard acceleration of free fall, m/s² (CGPM 1901).
    private const double StandardGravity = 9.80665;

    /// <summary>"Units that fit: N/mm, N/m."</summary>
    public string Fits => IsPlain
        ? "Write the number without a unit, or as per cent with %."
        : $"Units that fit: {string.Join(", ", KnownDimensions.Fitting(Exponents, Usual))}.";

    /// <summary>What to do when another dimension was found: the likely slip, or the units that fit.</summary>
    public string AdviceAgainst(Exponents found) => (Exponents, found) switch
    {
        _ when Is<Mass>(Exponents) && Is<Force>(found) => "Give the mass, as a scale shows it, in kg or lb.",
        _ when Is<Force>(Exponents) && Is<Mass>(found) => "For the weight of a mass write kgf or lbf.",
        _ when Is<Stiffness>(Exponents) && Is<AngularStiffness>(found) =>
            "A spring rate is force per travel; a rate per angle belongs to roll or pitch. " + Fits,
        _ when Is<AngularStiffness>(Exponents) && Is<Stiffness>(found) => "A roll or pitch rate is moment per angle. " + Fits,
        _ when Is<AngularStiffness>(Exponents) && found == new Exponents(2, 1, -2, 0) => "Name the angle: N m/deg or N m/rad.",
        _ when Is<Stiffness>(Exponents) && found == new Exponents(-1, 1, 0, 0) => "Kilograms per travel are meant as force: write kgf/mm.",
        _ when Is<Pressure>(Exponents) && found == new Exponents(-2, 1, 0, 0) => "Kilograms per area are meant as force: write kgf/cm².",
        _ when Is<Stiffness>(Exponents) && Is<DampingRate>(found) => "A spring rate is force per travel, a damping rate force per speed. " + Fits,
        _ when Is<DampingRate>(Exponents) && Is<Stiffness>(found) => "A damping rate is force per speed, a spring rate force per travel. " + Fits,
        _ when Is<Frequency>(Exponents) && Is<AngularRate>(found) => "A frequency counts cycles: 1 Hz is 360 deg/s. " + Fits,
        _ when Is<AngularRate>(Exponents) && Is<Frequency>(found) => "An angular rate names its angle: 1 Hz is 360 deg/s. " + Fits,
        _ when Is<Viscosity>(Exponents) && found == new Exponents(2, 0, -1, 0) =>
            "Multiply by the density: 1 cSt of a fluid of 1000 kg/m³ is 1 mPa s.",
        _ when Is<Frequency>(Exponents) && Is<Time>(found) => "A period of T seconds is a frequency of 1/T Hz. " + Fits,
        _ => Fits,
    };

    private static bool Is<TDimension>(Exponents exponents)
        where TDimension : struct, IDimension => TDimension.Exponents == exponents;
}
