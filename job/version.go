package job

// ProgramVersion is printed in every report, so that the same job file and the
// same version give the same numbers.
const ProgramVersion = "0.1.0"
