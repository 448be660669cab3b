namespace Heaveline.Web.Serving;

/// <summary>Addresses of pages about one car.</summary>
internal static class CarAddress
{
    /// <summary>The car page.</summary>
    public static string Car(string name) => $"car?car={Uri.EscapeDataString(name)}";

    /// <summary>The pass page.</summary>
    public static string Pass(string name) => $"pass?car={Uri.EscapeDataString(name)}";

    /// <summary>Something to take away from the car page.</summary>
    public static string Take(string what, string name) => $"take/{what}?car={Uri.EscapeDataString(name)}";
}
