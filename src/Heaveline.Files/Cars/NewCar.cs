using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>A new car that begins as a copy of another.</summary>
public static class NewCar
{
    /// <summary>The text of a car file under another name, every value of it marked as not measured on the new car.</summary>
    /// <param name="text">The text of the car file that it begins from.</param>
    /// <param name="title">What the new car is called.</param>
    public static EditOutcome From(string text, string title)
    {
        ArgumentNullException.ThrowIfNull(text);
        var name = YamlReading.Value(new SourceText("", text)).Root?.At("car") is { Text: { Length: > 0 } car } ? car : "another car";
        var note = $"Begun from {name}: what was not measured on this car says so at the end of its line.";
        var edited = CarFile.Edit(text, KeyEdit.Put(["car"], title), KeyEdit.Put(["note"], note));
        return edited.Text is { } begun ? new EditOutcome(UnmeasuredLines.Mark(begun, name), [], null) : edited;
    }
}
