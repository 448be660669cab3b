using Heaveline.Figures;

namespace Heaveline.Web.Pages.Rides;

/// <summary>What the page shows of one speed, of the first car.</summary>
/// <param name="Spectra">Response spectra with the wheelbase filter.</param>
/// <param name="Transfer">From road to body.</param>
public sealed record SpectraView(Figure Spectra, Figure Transfer);
