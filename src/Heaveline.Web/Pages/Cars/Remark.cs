namespace Heaveline.Web.Pages.Cars;

/// <summary>A refusal or a warning with the place in the form that it belongs to.</summary>
/// <param name="IsRefusal">Refused; else a likely slip.</param>
/// <param name="Message">What is wrong, in the file's words.</param>
/// <param name="Advice">What to write instead.</param>
/// <param name="File">The file that it stands in, by its name in the garage.</param>
/// <param name="Line">Its line, counted from 1.</param>
/// <param name="Path">The keys that lead to the field it belongs to; empty when no field is the place.</param>
public sealed record Remark(bool IsRefusal, string Message, string Advice, string File, int Line, IReadOnlyList<string> Path);
