using Heaveline.PageBench;

// heaveline page bench: how long the pass page takes from a slider's event to the redrawn page, by the program and by itself, and whether it holds
// its memory; and
// the pictures of the pages in docs/pages; how fast the page of the rule is; every chart of the pages, to be looked at.
try
{
    return args switch
    {
        ["soak", var minutes] => await Soak.Run(double.Parse(minutes, System.Globalization.CultureInfo.InvariantCulture)),
        [] => await SliderRace.Run(240),
        ["sliders", var moves] => await SliderRace.Run(int.Parse(moves, System.Globalization.CultureInfo.InvariantCulture)),
        ["live", var moves] => await LiveRace.Run(int.Parse(moves, System.Globalization.CultureInfo.InvariantCulture), 1),
        ["live", var moves, var tabs] => await LiveRace.Run(
            int.Parse(moves, System.Globalization.CultureInfo.InvariantCulture), int.Parse(tabs, System.Globalization.CultureInfo.InvariantCulture)),
        ["pictures", var folder] => await Pictures.Take(folder),
        ["charts", var folder] => await ChartPictures.Take(folder),
        ["rule"] => await RuleRace.Run(8),
        ["rule", var rounds] => await RuleRace.Run(int.Parse(rounds, System.Globalization.CultureInfo.InvariantCulture)),
        _ => Usage(),
    };
}
catch (FormatException)
{
    return Usage();
}

static int Usage()
{
    Console.Error.WriteLine("Heaveline.PageBench [sliders MOVES | live MOVES [TABS] | rule RANGES | soak MINUTES | pictures FOLDER | charts FOLDER]");
    return 2;
}
