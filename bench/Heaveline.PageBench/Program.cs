using Heaveline.PageBench;

// heaveline page bench: how long the pass page takes from a slider's event to the redrawn page, and whether it holds its memory; and
// the pictures of the pages in docs/pages.
try
{
    return args switch
    {
        ["soak", var minutes] => await Soak.Run(double.Parse(minutes, System.Globalization.CultureInfo.InvariantCulture)),
        [] => await SliderRace.Run(240),
        ["sliders", var moves] => await SliderRace.Run(int.Parse(moves, System.Globalization.CultureInfo.InvariantCulture)),
        ["pictures", var folder] => await Pictures.Take(folder),
        _ => Usage(),
    };
}
catch (FormatException)
{
    return Usage();
}

static int Usage()
{
    Console.Error.WriteLine("Heaveline.PageBench [sliders MOVES | soak MINUTES | pictures FOLDER]");
    return 2;
}
