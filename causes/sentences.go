package causes

import "fmt"

var sentences = readSentences()

func readSentences() map[[2]string]string {
	all := map[[2]string]string{}
	for _, r := range readTable("sentences.csv") {
		all[[2]string{r["variable"], r["state"]}] = r["text"]
	}
	for _, v := range variables {
		for _, s := range v.States {
			if all[[2]string{v.Name, s}] == "" {
				panic(fmt.Sprintf("causes: sentences.csv says nothing of %s %s", v.Name, s))
			}
		}
	}
	return all
}

// Says returns the sentence a state of a variable stands for; the state itself
// when there is none.
func Says(variable, state string) string {
	if text, ok := sentences[[2]string{variable, state}]; ok {
		return text
	}
	return state
}
